package org.chordlog.simulator;

import java.util.function.LongSupplier;

/** An indicator that speaks only when it is asked. */
interface Listener {
  /** What it says to these bytes; nothing where they are no whole request yet. */
  byte[] answer(byte[] received, LongSupplier valueNm);
}
