package org.chordlog.decode;

import java.math.BigDecimal;
import java.util.function.Consumer;
import org.chordlog.measure.LengthUnit;
import org.jspecify.annotations.Nullable;

/** Bodies in which the number is not text. */
final class BinaryReader implements FrameReader {
  private final BinaryNumber number;
  private final Nanometres nanometres;
  private final LengthUnit unit;
  private final boolean button;

  BinaryReader(FrameProfile profile, BinaryNumber number, LengthUnit unit) {
    this.number = number;
    this.unit = unit;
    nanometres = new Nanometres(profile.number().scale());
    button = profile.buttonOnly();
  }

  @Override
  public @Nullable String read(Frame frame, Consumer<Decoded> sink) {
    int at = frame.bodyFrom + number.offset();
    if (at + number.length() > frame.bodyTo) {
      return "too short for its number";
    }
    Long whole = number.whole(frame.bytes, at);
    if (whole == null) {
      return "not a packed decimal";
    }
    if (number.type() == BinaryNumber.Type.FLOAT32) {
      return real(frame, Float.intBitsToFloat((int) (long) whole), sink);
    }
    return give(frame, BigDecimal.valueOf(whole), sink);
  }

  /** The shortest decimal that is that float: what the indicator shows. */
  private @Nullable String real(Frame frame, float value, Consumer<Decoded> sink) {
    if (Float.isFinite(value)) {
      return give(frame, new BigDecimal(Float.toString(value)), sink);
    }
    sink.accept(
        new Decoded.Status(frame.nanos, frame.raw(), Decoded.Status.Kind.ERROR, "not a number"));
    return null;
  }

  private @Nullable String give(Frame frame, BigDecimal value, Consumer<Decoded> sink) {
    long nm = nanometres.of(value, unit);
    if (nm == Nanometres.REFUSED) {
      return "beyond 5000 kilometres";
    }
    sink.accept(new Decoded.Value(frame.nanos, frame.raw(), nm, unit, 0, button));
    return null;
  }
}
