package org.chordlog.decode;

/** The kinds of decoder; a new one is a class, a row here, its test and a README row. */
public enum DecoderKind {
  /** Frames of text: lines, fixed lengths, marked frames, frames between pauses. */
  FRAMES,
  /** Holding or input registers, polled after the Modbus RTU standard. */
  MODBUS_RTU
}
