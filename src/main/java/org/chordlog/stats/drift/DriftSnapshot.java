package org.chordlog.stats.drift;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A machine over its jobs: each job's deviation against the pieces bent before it, with the fitted
 * trend, its forecast, and what to make of it.
 */
public record DriftSnapshot(
    String machine,
    String quantity,
    String unit,
    List<BlockMean> jobs,
    List<Trend> trend,
    double forecastFromPieces,
    @Nullable Double lowerLimit,
    @Nullable Double upperLimit,
    @Nullable Double jumpAtPieces,
    String verdict,
    List<Mark> marks) {
  /** One job: the machine's piece count at its middle, its deviation with a 95 % interval. */
  public record BlockMean(
      long jobId,
      String name,
      double pieces,
      long atMicros,
      double deviation,
      @Nullable Double lower,
      @Nullable Double upper) {}

  /** The trend line at a piece count, with its band. */
  public record Trend(double pieces, double value, double lower, double upper) {}

  /** Something that happened at a piece count, in words; a job's words are its name. */
  public record Mark(double pieces, Kind kind, String words) {
    /** What happened. */
    public enum Kind {
      CORRECTION,
      SET_UP,
      MATERIAL_LOT,
      WORK,
      JOB
    }
  }

  /** The same with marks, in the order of pieces. */
  public DriftSnapshot withMarks(List<Mark> marks) {
    return new DriftSnapshot(
        machine,
        quantity,
        unit,
        jobs,
        trend,
        forecastFromPieces,
        lowerLimit,
        upperLimit,
        jumpAtPieces,
        verdict,
        marks);
  }

  public DriftSnapshot {
    marks = List.copyOf(marks);
    jobs = List.copyOf(jobs);
    trend = List.copyOf(trend);
  }
}
