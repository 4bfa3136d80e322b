package org.chordlog.decode;

import org.chordlog.measure.BadInput;
import org.chordlog.measure.LengthUnit;
import org.jspecify.annotations.Nullable;

/** Refuses profiles whose frames could not be told apart; else their unit. */
final class ProfileCheck {
  private ProfileCheck() {}

  static @Nullable LengthUnit frames(
      @Nullable LengthUnit unit,
      Framing framing,
      String pattern,
      NumberForm number,
      Checksum checksum) {
    boolean none = checksum.kind() == Checksum.Kind.NONE;
    if (framing.kind() == Framing.Kind.FIXED_LENGTH
        && none
        && pattern.isEmpty()
        && framing.idleMs() == 0
        && framing.start().length() + framing.end().length() < 2
        && number.sign() != NumberForm.Sign.ALWAYS) {
      throw new BadInput(
          "framing",
          "FIXED_LENGTH",
          "has nothing that tells where a frame begins",
          "number.sign ALWAYS, a pattern, a checksum, or framing.idleMs");
    }
    if (!none) {
      place(framing, checksum);
    }
    return unit;
  }

  static LengthUnit modbus(@Nullable LengthUnit unit, @Nullable ModbusRegisters registers) {
    if (registers == null) {
      throw new BadInput("modbus", "none", "is missing", "the registers of a MODBUS_RTU profile");
    }
    return fixedUnit(unit, "registers");
  }

  /** A binary number may look like any byte: only length, check and start bytes tell frames. */
  static LengthUnit binary(
      @Nullable LengthUnit unit,
      @Nullable BinaryNumber binary,
      Framing framing,
      Checksum checksum) {
    if (binary == null) {
      throw new BadInput("binary", "none", "is missing", "the number of a BINARY profile");
    }
    LengthUnit fixedUnit = fixedUnit(unit, "binary frames");
    boolean fixed = framing.kind() == Framing.Kind.FIXED_LENGTH;
    if (!fixed && framing.kind() != Framing.Kind.IDLE_GAP) {
      throw new BadInput(
          "framing", framing.kind(), "can't bound binary numbers", "FIXED_LENGTH, IDLE_GAP");
    }
    boolean none = checksum.kind() == Checksum.Kind.NONE;
    int marks = framing.start().length() + framing.end().length();
    if (none && marks < 2 && framing.idleMs() == 0) {
      throw new BadInput(
          "framing",
          framing.kind(),
          "has nothing that tells where a frame begins",
          "two start or end bytes, a checksum, or framing.idleMs");
    }
    if (fixed && framing.length() < marks + binary.offset() + binary.length() + checksum.width()) {
      throw new BadInput(
          "framing.length",
          framing.length(),
          "is too short",
          "start, offset, number, check and end in it");
    }
    return fixedUnit;
  }

  private static LengthUnit fixedUnit(@Nullable LengthUnit unit, String what) {
    if (unit == null) {
      throw new BadInput("unit", "none", "is missing", "MM, UM or INCH: " + what + " have no unit");
    }
    return unit;
  }

  private static void place(Framing framing, Checksum checksum) {
    boolean marked = framing.kind() == Framing.Kind.MARKERS;
    if (checksum.afterEnd() && !marked) {
      throw new BadInput("checksum.afterEnd", true, "needs an end marker", "framing MARKERS");
    }
    String closing = marked ? framing.end() : framing.terminator();
    boolean closed = marked ? !checksum.afterEnd() : framing.kind() == Framing.Kind.TERMINATOR;
    if (closed && checksum.encoding() == Checksum.Encoding.RAW && closing.length() < 2) {
      throw new BadInput(
          "checksum.encoding",
          "RAW",
          "may look like the end of the frame",
          "HEX, afterEnd, or a terminator or end of two bytes");
    }
  }
}
