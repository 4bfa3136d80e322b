package org.chordlog.measure;

/**
 * What was found and done about a signal of a chart; append-only, the newest of a point counts. The
 * point is named by the characteristic and chart it is on and by the last reading in it.
 */
public record SignalAnswer(
    long id,
    long jobId,
    String characteristic,
    String chart,
    long readingId,
    String cause,
    String action,
    long atMicros,
    String by) {
  public SignalAnswer {
    Check.text("characteristic", characteristic);
    Check.text("chart", chart);
    Check.text("cause", cause);
  }
}
