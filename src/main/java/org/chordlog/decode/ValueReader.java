package org.chordlog.decode;

import java.math.BigDecimal;
import org.chordlog.measure.LengthUnit;
import org.jspecify.annotations.Nullable;

/** Number and unit of a frame to nanometres; holds the last one read. */
final class ValueReader {
  private static final int CONFIRMATIONS = 3;
  private final FrameProfile profile;
  private final NumberForm form;
  private final UnitTexts texts;
  private final Nanometres nanometres;
  private final ShapeGuard[] guards = new ShapeGuard[ProfileChannels.MOST + 1];
  final NumberText number;
  private LengthUnit unit = LengthUnit.MM;
  private long nm;

  ValueReader(FrameProfile profile, NumberForm form) {
    this.profile = profile;
    this.form = form;
    number = new NumberText(form);
    texts = new UnitTexts(profile.units());
    nanometres = new Nanometres(form.scale());
    int confirmations = confirmations();
    for (int channel = 0; channel <= ProfileChannels.MOST; channel++) {
      guards[channel] = new ShapeGuard(confirmations);
    }
  }

  private int confirmations() {
    if (profile.unit() != null) {
      return 0;
    }
    return profile.checksum().kind() == Checksum.Kind.NONE ? CONFIRMATIONS : 1;
  }

  /** Null, or why no number of the profile's form stands at {@code from}. */
  @Nullable String number(byte[] bytes, int from, int to) {
    String reason = number.read(bytes, from, to);
    if (reason != null) {
      return reason;
    }
    Integer decimals = form.decimals();
    if (decimals != null && number.decimals != decimals) {
      return number.decimals + " decimals instead of " + decimals;
    }
    Integer before = form.integerDigits();
    boolean empty = number.integerDigits == 0 && !form.zeroOmitted();
    if (before != null ? number.integerDigits != before : empty) {
      return number.integerDigits + " digits before the mark";
    }
    return null;
  }

  /** Null, or why the text (blanks around it allowed) names no unit or the wrong one. */
  @Nullable String unit(byte[] bytes, int from, int to) {
    int start = NumberText.skipBlanks(bytes, from, to);
    int end = to;
    while (end > start && NumberText.isBlank(bytes[end - 1])) {
      end--;
    }
    LengthUnit fixed = profile.unit();
    LengthUnit said = start == end ? fixed : texts.of(bytes, start, end);
    if (said == null) {
      return start == end ? "no unit" : "unknown unit or text behind the number";
    }
    unit = said;
    return fixed == null || fixed == said ? null : "unit " + said + ", the profile says " + fixed;
  }

  /** Ends the reading; null, or why it is refused. */
  @Nullable String value(boolean reversed, int channel) {
    String reason = form.decimalsVary() ? null : guards[channel].refuse(unit, number);
    if (reason != null) {
      return reason;
    }
    long size = size();
    if (size == Nanometres.REFUSED) {
      return "beyond 5000 kilometres";
    }
    nm = (number.sign < 0) == reversed ? size : -size;
    return null;
  }

  private long size() {
    return number.exponent == 0
        ? nanometres.of(number.digits, number.decimals, unit)
        : nanometres.of(BigDecimal.valueOf(number.digits, number.decimals - number.exponent), unit);
  }

  /** What was read. */
  Decoded.Value taken(Frame frame, byte[] raw, int channel, boolean button) {
    return new Decoded.Value(frame.nanos, raw, nm, unit, channel, button);
  }
}
