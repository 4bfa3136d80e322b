package org.chordlog.stats.math;

import org.chordlog.measure.JobEvent;

/** Running statistics that can be stored and continued. */
public interface Checkpointed {
  /** To be told after the reading that the event follows. */
  void happened(JobEvent event);

  /** The whole state; its size does not grow with the readings. */
  byte[] checkpoint();
}
