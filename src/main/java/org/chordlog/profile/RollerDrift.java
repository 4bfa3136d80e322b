package org.chordlog.profile;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Follows the ripple of each roller of a machine over pieces: an exponentially weighted moving
 * average (S. W. Roberts 1959) of the evidence of it. Without a ripple the evidence on one piece is
 * exponential with mean 1, so the limit is 1 + L√(λ/(2 − λ)). One thread.
 */
public final class RollerDrift {
  static final double WEIGHT = 0.2;
  private static final double SIGMAS = 4;
  private static final int NEWEST = 200;

  private final Map<String, Track> tracks = new LinkedHashMap<>();

  private static final class Track {
    private long pieces;
    private double evidence = 1;
    private double square;
    private double variance;
    private long beyondFor;
    private final Deque<Double> newest = new ArrayDeque<>();

    void add(RipplePoint point) {
      pieces++;
      evidence += WEIGHT * (point.evidence() - evidence);
      double weight = Math.max(WEIGHT, 1.0 / pieces);
      square += weight * (point.squarePercent() - square);
      variance += weight * (point.variancePercent() - variance);
      beyondFor = evidence > limit() ? beyondFor + 1 : 0;
      newest.addLast(evidence);
      if (newest.size() > NEWEST) {
        newest.removeFirst();
      }
    }

    RollerTrend trend(String roller) {
      return new RollerTrend(
          roller,
          pieces,
          evidence,
          limit(),
          Math.sqrt(Math.max(0, square)),
          Math.sqrt(variance * shrink()),
          beyondFor,
          List.copyOf(newest));
    }

    private double shrink() {
      return Math.max(WEIGHT / (2 - WEIGHT), 1.0 / Math.max(1, pieces));
    }
  }

  static double limit() {
    return 1 + SIGMAS * Math.sqrt(WEIGHT / (2 - WEIGHT));
  }

  /** The points of one piece. */
  public void add(List<RipplePoint> points) {
    for (RipplePoint point : points) {
      tracks.computeIfAbsent(point.roller(), name -> new Track()).add(point);
    }
  }

  /** Of each roller that was seen, in the order in which they first were. */
  public List<RollerTrend> trends() {
    List<RollerTrend> trends = new ArrayList<>();
    tracks.forEach((roller, track) -> trends.add(track.trend(roller)));
    return trends;
  }
}
