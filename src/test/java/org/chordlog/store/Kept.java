package org.chordlog.store;

import org.chordlog.measure.Bridge;
import org.chordlog.measure.Job;
import org.chordlog.measure.Reading;

/** What a reading needs, stored. */
public final class Kept {
  private Kept() {}

  /** The first reading of a new job, not stored yet. */
  public static Reading first(Store store) {
    Bridge bridge = store.gauges().add(Some.bridge("200"), "me");
    Job job = store.jobs().add(Some.job("J", "M"), "me");
    return Some.reading("A", 1, job.id(), store.readings().keep(Some.setUp(bridge)));
  }
}
