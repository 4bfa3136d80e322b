package org.chordlog.monitor;

/** A running state that a ladder can keep. */
interface Kept {
  /** Readings gone over. */
  long count();

  long lastReadingId();

  /** Whether no event waits for a reading to come. */
  boolean settled();

  byte[] pack();
}
