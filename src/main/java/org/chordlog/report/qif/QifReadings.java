package org.chordlog.report.qif;

import java.util.Iterator;
import org.chordlog.measure.SetUp;

/**
 * The readings of a job in the order of commit. They are read twice, once to count and once to
 * write, and have to be the same both times: bound them by a last reading.
 */
public interface QifReadings {
  Iterator<QifReading> all();

  /** What the readings with that set-up were computed from. */
  SetUp setUp(long id);
}
