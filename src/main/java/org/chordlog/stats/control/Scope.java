package org.chordlog.stats.control;

/** The readings that figures and charts are taken from: since the last change, or all of a job. */
public enum Scope {
  PHASE,
  JOB
}
