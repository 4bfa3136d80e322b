package org.chordlog.web;

import org.chordlog.measure.Job;
import org.chordlog.measure.Specification;
import org.chordlog.web.http.Faults;

/** What of a job may be a slip of the pen: it is asked about, and taken when confirmed. */
record JobDoubts(Specification asked) {
  /** A tolerance wider than that part of the radius is no roll-bending tolerance; no source. */
  private static final double WIDE = 0.25;

  /** Limits that far off the middle; no source. */
  private static final double LOPSIDED = 10;

  static JobDoubts of(Job job) {
    return new JobDoubts(job.specification());
  }

  void refuse() {
    Double lower = asked.lowerLimitMm();
    Double upper = asked.upperLimitMm();
    if (lower == null || upper == null) {
      return;
    }
    Faults faults = new Faults();
    double below = asked.targetMm() - lower;
    double above = upper - asked.targetMm();
    if (below + above > WIDE * asked.targetMm()) {
      faults.add(
          "specification.upperLimitMm",
          upper,
          "makes a tolerance of more than a quarter of the radius",
          "limits near the target, or confirmed: true");
    }
    if (Math.max(below, above) > LOPSIDED * Math.min(below, above)) {
      faults.add(
          "specification.lowerLimitMm",
          lower,
          "leaves the target almost at a limit",
          "limits around the target, or confirmed: true");
    }
    faults.refuse();
  }
}
