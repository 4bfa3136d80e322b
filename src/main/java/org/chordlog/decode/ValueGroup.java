package org.chordlog.decode;

import com.google.re2j.Matcher;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** One value of a pattern with its own sign and unit; {@code suffix} is empty or its channel. */
final class ValueGroup {
  private final ValueReader values;
  private final Groups groups;
  private final String value;
  private final String sign;
  private final String unit;
  private final int ownChannel;
  private final boolean buttonOnly;
  private final Map<String, SignMeaning> signs;

  ValueGroup(FrameProfile profile, Groups groups, String suffix) {
    this.groups = groups;
    value = "value" + suffix;
    sign = "sign" + suffix;
    unit = groups.has("unit" + suffix) ? "unit" + suffix : "unit";
    ownChannel = suffix.isEmpty() ? 0 : Integer.parseInt(suffix);
    buttonOnly = profile.buttonOnly();
    signs = profile.signs();
    NumberForm form = profile.number();
    values = new ValueReader(profile, groups.has(sign) ? form.unsigned() : form);
  }

  /** Adds the value to {@code found}, if the frame has it; null, or why it is refused. */
  @Nullable String read(
      Frame frame, Matcher match, byte[] raw, int channel, List<Decoded.Value> found) {
    int start = groups.start(match, value);
    if (start < 0) {
      return null;
    }
    int to = frame.bodyFrom + groups.end(match, value);
    String reason = values.number(frame.bytes, frame.bodyFrom + start, to);
    if (reason == null) {
      reason = values.number.end == to ? sign(match) : "text behind the number";
    }
    if (reason == null) {
      reason = unit(frame, match);
    }
    int taken = ownChannel == 0 ? channel : ownChannel;
    if (reason == null) {
      reason = values.value(!groups.text(match, "reversed").isEmpty(), taken);
    }
    if (reason == null) {
      boolean button = buttonOnly || !groups.text(match, "button").isEmpty();
      found.add(values.taken(frame, raw, taken, button));
    }
    return reason;
  }

  private @Nullable String sign(Matcher match) {
    if (!groups.has(sign)) {
      return null;
    }
    String text = groups.text(match, sign);
    SignMeaning named = signs.get(text);
    values.number.sign =
        switch (named == null ? text : named.name()) {
          case "-", "MINUS" -> -1;
          case "+", "PLUS" -> 1;
          default -> 0;
        };
    return text.isEmpty() || values.number.sign != 0 ? null : "unknown sign '" + text + "'";
  }

  private @Nullable String unit(Frame frame, Matcher match) {
    int from = Math.max(0, groups.start(match, unit));
    int to = Math.max(0, groups.end(match, unit));
    return values.unit(frame.bytes, frame.bodyFrom + from, frame.bodyFrom + to);
  }
}
