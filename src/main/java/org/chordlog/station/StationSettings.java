package org.chordlog.station;

import org.chordlog.capture.Capture;
import org.chordlog.capture.CaptureOptions;
import org.chordlog.capture.Captures;
import org.chordlog.decode.FrameProfile;
import org.chordlog.link.LinkSettings;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Bridge;
import org.chordlog.measure.CaptureMode;
import org.chordlog.measure.Check;
import org.chordlog.measure.Indicator;
import org.jspecify.annotations.Nullable;

/**
 * A station as the station file has it. {@code bridge} is the one to mount while none was ever
 * mounted; {@code channel} the indicator's channel that measures the depth; {@code silenceSeconds}
 * reopens a link on which nothing came for so long, 0 for never.
 */
public record StationSettings(
    String name,
    String machine,
    LinkSettings link,
    FrameProfile profile,
    int channel,
    Indicator indicator,
    @Nullable Bridge bridge,
    CaptureOptions capture,
    ZeroRule zero,
    double silenceSeconds) {
  static final double SILENCE_SECONDS = 10;
  private static final String NAME = "[A-Za-z0-9][A-Za-z0-9_.-]{0,39}";

  public StationSettings {
    if (!Check.text("name", name).matches(NAME)) {
      throw new BadInput("name", name, "can't be used", "1 to 40 letters, digits, '-', '_' or '.'");
    }
    Check.text("machine", machine);
    Check.within("channel", channel, 0, 99);
    Check.within("silenceSeconds", silenceSeconds, 0, 86_400);
    capture.settings(indicator);
  }

  /** With everything else as it usually is: settled capture, no bridge yet. */
  public static StationSettings usual(
      String name, LinkSettings link, FrameProfile profile, Indicator indicator) {
    return new StationSettings(
        name,
        name,
        link,
        profile,
        0,
        indicator,
        null,
        CaptureOptions.of(CaptureMode.SETTLED),
        ZeroRule.DEFAULT,
        SILENCE_SECONDS);
  }

  /** How long the plunger must stand still for a zero: 1 s with the usual rest of 0.4 s. */
  long stillNanos() {
    return capture.settings(indicator).restNanos() * 5 / 2;
  }

  Capture newCapture() {
    return Captures.of(capture.settings(indicator));
  }

  /** Whether the link is looked at every few milliseconds, to send requests in time. */
  boolean polled() {
    return profile.polling() != null || profile.modbus() != null;
  }
}
