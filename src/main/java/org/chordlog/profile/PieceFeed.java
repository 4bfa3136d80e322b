package org.chordlog.profile;

import java.util.ArrayList;
import java.util.List;

/**
 * How a piece moves: direction with 3 mm of hysteresis, number of the traverse, mean feed and
 * spacing of the values while it moves, stops and jogs. Places in nm from where touch began,
 * growing in the direction of feed.
 */
final class PieceFeed {
  private static final long HYSTERESIS_NM = 3_000_000;
  private static final long STOPPED_NM = 2_000_000;
  private static final long STOPPED_NANOS = 5_000_000_000L;
  private static final long JOG_NM = 10_000_000;
  private static final int MOST_EVENTS = 64;
  private static final long MARK_NANOS = 100_000_000L;

  private final List<ProfileEvent> events = new ArrayList<>();
  private int direction = 1;
  private int traverse = 1;
  private long farNm;
  private long turnedNm;
  private long farthestNm;
  private long markNm;
  private long markNanos;
  private int markValues;
  private double fastest;
  private double travelNm;
  private double movingNanos;
  private long movingValues;
  private long anchorNm;
  private long anchorNanos;
  private long placeNm;

  PieceFeed(long nanos) {
    markNanos = nanos;
    anchorNanos = nanos;
  }

  /** Whether the direction turned. */
  boolean move(long newPlaceNm, long nanos) {
    placeNm = newPlaceNm;
    stand(nanos);
    markValues++;
    boolean turned = false;
    if (direction * (placeNm - farNm) > 0) {
      farNm = placeNm;
      farthestNm = Math.max(farthestNm, farNm);
      mark(nanos);
    } else if (direction * (farNm - placeNm) > HYSTERESIS_NM) {
      turn(nanos);
      turned = true;
    }
    return turned;
  }

  private void turn(long nanos) {
    if (direction < 0 && turnedNm - farNm >= JOG_NM) {
      note(new ProfileEvent(ProfileEvent.Kind.JOGGED, turnedNm, turnedNm - farNm));
    }
    turnedNm = farNm;
    direction = -direction;
    farNm = placeNm;
    traverse++;
    startMark(nanos);
  }

  /**
   * Takes the time for the next 5 mm, over 0.1 s at least since adapters hand values over in lumps;
   * what took four times the fastest was partly a stop.
   */
  private void mark(long nanos) {
    double wayNm = Math.abs(farNm - markNm);
    if (wayNm < FineBins.WIDTH_NM || nanos - markNanos < MARK_NANOS) {
      return;
    }
    double took = nanos - markNanos;
    fastest = Math.max(fastest, wayNm / took);
    if (wayNm / took >= fastest / 4) {
      travelNm += wayNm;
      movingNanos += took;
      movingValues += markValues;
    }
    startMark(nanos);
  }

  private void startMark(long nanos) {
    markNm = farNm;
    markNanos = nanos;
    markValues = 0;
  }

  private void stand(long nanos) {
    if (Math.abs(placeNm - anchorNm) < STOPPED_NM) {
      return;
    }
    if (nanos - anchorNanos >= STOPPED_NANOS) {
      long ms = (nanos - anchorNanos) / 1_000_000;
      note(new ProfileEvent(ProfileEvent.Kind.STOPPED, anchorNm, ms));
    }
    anchorNm = placeNm;
    anchorNanos = nanos;
  }

  /** Keeps an event; beyond 64 of them the rest is not told. */
  void note(ProfileEvent event) {
    if (events.size() < MOST_EVENTS) {
      events.add(event);
    }
  }

  boolean stopped(long nanos) {
    return nanos - anchorNanos >= STOPPED_NANOS;
  }

  List<ProfileEvent> events() {
    return List.copyOf(events);
  }

  int traverse() {
    return traverse;
  }

  int direction() {
    return direction;
  }

  /** Where the direction turned last. */
  long turnedNm() {
    return turnedNm;
  }

  /** The farthest place that was reached. */
  long farthestNm() {
    return farthestNm;
  }

  /** Mean spacing of the values while moving, 0 before 5 mm were moved. */
  long pitchNm() {
    return movingValues == 0 ? 0 : Math.round(travelNm / movingValues);
  }

  long feedNmPerSecond() {
    return movingNanos == 0 ? 0 : Math.round(travelNm / movingNanos * 1e9);
  }
}
