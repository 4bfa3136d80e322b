package org.chordlog.simulator;

import java.util.ArrayList;
import java.util.List;

/** Where a strip is at each second: break points of its way, with the share each pass has bent. */
final class LineMotion {
  private final List<Leg> legs = new ArrayList<>();
  private double endSeconds;
  private double endMm;
  private int at;

  /** A part of the way at one speed. */
  record Leg(double fromSeconds, double toSeconds, double fromMm, double toMm, double share) {
    double placeMm(double seconds) {
      double way = toSeconds - fromSeconds;
      double done = way <= 0 ? 1 : (seconds - fromSeconds) / way;
      return fromMm + Math.max(0, Math.min(1, done)) * (toMm - fromMm);
    }
  }

  LineMotion(double startSeconds, double startMm) {
    endSeconds = startSeconds;
    endMm = startMm;
  }

  void go(double toMm, double mmPerSecond, double share) {
    add(Math.abs(toMm - endMm) / mmPerSecond, toMm, share);
  }

  void rest(double seconds, double share) {
    add(seconds, endMm, share);
  }

  private void add(double seconds, double toMm, double share) {
    legs.add(new Leg(endSeconds, endSeconds + seconds, endMm, toMm, share));
    endSeconds += seconds;
    endMm = toMm;
  }

  double endSeconds() {
    return endSeconds;
  }

  /** The leg of that second; times are asked about in nearly their order. */
  Leg leg(double seconds) {
    while (at > 0 && legs.get(at).fromSeconds() > seconds) {
      at--;
    }
    while (at < legs.size() - 1 && legs.get(at).toSeconds() <= seconds) {
      at++;
    }
    return legs.get(at);
  }

  double placeMm(double seconds) {
    return leg(seconds).placeMm(seconds);
  }

  /** When a place is first reached. */
  double firstAt(double placeMm) {
    for (Leg leg : legs) {
      if (leg.toMm() >= placeMm && leg.fromMm() <= placeMm) {
        double way = leg.toMm() - leg.fromMm();
        double done = way == 0 ? 0 : (placeMm - leg.fromMm()) / way;
        return leg.fromSeconds() + done * (leg.toSeconds() - leg.fromSeconds());
      }
    }
    return endSeconds;
  }

  /** What comes after that second is put off by a stop, or by a way back and on again. */
  void interrupt(double seconds, double backMm, double mmPerSecond, double restSeconds) {
    Leg now = leg(seconds);
    double place = now.placeMm(seconds);
    List<Leg> later = new ArrayList<>(legs.subList(at + 1, legs.size()));
    legs.subList(at, legs.size()).clear();
    legs.add(new Leg(now.fromSeconds(), seconds, now.fromMm(), place, now.share()));
    endSeconds = seconds;
    endMm = place;
    if (backMm > 0) {
      go(place - backMm, mmPerSecond, now.share());
    }
    rest(restSeconds, now.share());
    if (backMm > 0) {
      go(place, mmPerSecond, now.share());
    }
    add(Math.max(0, now.toSeconds() - seconds), now.toMm(), now.share());
    for (Leg leg : later) {
      add(leg.toSeconds() - leg.fromSeconds(), leg.toMm(), leg.share());
    }
  }
}
