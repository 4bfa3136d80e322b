package org.chordlog.measure;

/** What was measured; only readings of products enter the statistics and totals of a job. */
public enum ReadingKind {
  PRODUCT,
  MASTER,
  CHECK
}
