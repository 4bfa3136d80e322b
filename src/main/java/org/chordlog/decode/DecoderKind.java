package org.chordlog.decode;

import org.jspecify.annotations.Nullable;

/**
 * The kinds of decoder. What each does and needs is asked in switches that don't compile without.
 */
public enum DecoderKind {
  /** Frames of text: lines, fixed lengths, marked frames, frames between pauses. */
  FRAMES(true),
  /** Frames in which the number is not text: whole numbers, floats, packed decimals. */
  BINARY(false),
  /** Holding or input registers, polled after the Modbus RTU standard. */
  MODBUS_RTU(false);

  private final boolean text;

  DecoderKind(boolean text) {
    this.text = text;
  }

  /** Whether numbers are written in digits; else only the frame's form tells where it begins. */
  boolean isText() {
    return text;
  }

  /** The kind where none is given. */
  static DecoderKind of(@Nullable BinaryNumber binary, @Nullable ModbusRegisters modbus) {
    return modbus != null ? MODBUS_RTU : binary != null ? BINARY : FRAMES;
  }
}
