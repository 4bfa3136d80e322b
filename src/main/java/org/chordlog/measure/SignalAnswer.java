package org.chordlog.measure;

/** What was found and done about a signal of a chart; append-only, the newest of a point counts. */
public record SignalAnswer(
    long id, long jobId, PointName point, String cause, String action, Recorded recorded) {
  /** A point of a chart: the characteristic and chart it is on and the last reading in it. */
  public record PointName(String characteristic, String chart, long readingId) {
    public PointName {
      Check.text("characteristic", characteristic);
      Check.text("chart", chart);
    }
  }

  public SignalAnswer {
    Check.text("cause", cause);
  }

  public String characteristic() {
    return point.characteristic();
  }

  public String chart() {
    return point.chart();
  }

  public long readingId() {
    return point.readingId();
  }

  public long atMicros() {
    return recorded.atMicros();
  }

  public String by() {
    return recorded.by();
  }
}
