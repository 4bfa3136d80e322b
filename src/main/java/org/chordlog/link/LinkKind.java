package org.chordlog.link;

/** The kinds of link a station file may name. */
public enum LinkKind {
  /** A serial device: a cable, a USB adapter, or Bluetooth serial as the system shows it. */
  SERIAL,
  /** A serial device server: bytes over TCP. */
  TCP,
  /** A recorded stream, with its timing or as fast as possible. */
  REPLAY
}
