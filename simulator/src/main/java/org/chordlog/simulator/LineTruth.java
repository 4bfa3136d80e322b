package org.chordlog.simulator;

import java.util.ArrayList;
import java.util.List;
import org.chordlog.simulator.LineScenario.RunOut;

/**
 * What was true of a piece that ran through: its bend each mm, and what a perfect bridge would have
 * shown of it. Places in mm from the front of the piece; curvatures of the measured face, 1/mm,
 * positive in the sense of the bend.
 */
public final class LineTruth {
  private final Builder of;
  private final double beganSeconds;
  private final double leftSeconds;

  private LineTruth(Builder of, double beganSeconds, double leftSeconds) {
    this.of = of;
    this.beganSeconds = beganSeconds;
    this.leftSeconds = leftSeconds;
  }

  public int piece() {
    return of.number;
  }

  public double lengthMm() {
    return of.length;
  }

  /** From the front to the middle of the rise. */
  public double leadInMm() {
    return of.leadIn;
  }

  /** From the middle of the fall to the end. */
  public double leadOutMm() {
    return of.leadOut;
  }

  public double riseInMm() {
    return of.riseIn;
  }

  public double riseOutMm() {
    return of.riseOut;
  }

  /** Half the span of the bridge. */
  public double halfSpanMm() {
    return of.half;
  }

  /** When the front came under the plunger. */
  public double beganSeconds() {
    return beganSeconds;
  }

  /** When the end left it. */
  public double leftSeconds() {
    return leftSeconds;
  }

  /** From where on the bridge stands on the full bend alone. */
  public double idealFromMm() {
    return of.leadIn + of.riseIn / 2 + of.half;
  }

  /** Up to where it does. */
  public double idealToMm() {
    return of.length - of.leadOut - of.riseOut / 2 - of.half;
  }

  public double curvaturePerMm(double placeMm) {
    return of.at(of.curvature, placeMm);
  }

  public double shownPerMm(double placeMm) {
    return of.at(of.shown, placeMm);
  }

  public double meanCurvaturePerMm(double fromMm, double toMm) {
    return of.mean(of.curvature, fromMm, toMm);
  }

  public double meanShownPerMm(double fromMm, double toMm) {
    return of.mean(of.shown, fromMm, toMm);
  }

  public double leastShownPerMm(double fromMm, double toMm) {
    return of.extreme(fromMm, toMm, false);
  }

  public double mostShownPerMm(double fromMm, double toMm) {
    return of.extreme(fromMm, toMm, true);
  }

  /** Share of the full level that is bent at a place. */
  public double ramp(double placeMm) {
    return of.ramp(placeMm);
  }

  /** The rollers that ran out, each with its phase on this piece. */
  public List<Rolled> rollers() {
    return List.copyOf(of.rollers);
  }

  /** A roller and its phase at the front of the piece, radians. */
  public record Rolled(RunOut roller, double phase) {}

  /** Gathers it while a strip is bent. */
  static final class Builder {
    final int number;
    final int from;
    final int length;
    double leadIn;
    double leadOut;
    double riseIn;
    double riseOut;
    double level;
    private int half;
    private double[] curvature = {};
    private double[] shown = {};
    private final List<Rolled> rollers = new ArrayList<>();

    Builder(int number, int from, int length) {
      this.number = number;
      this.from = from;
      this.length = length;
    }

    double ramp(double place) {
      double in = riseIn == 0 ? (place < leadIn ? 0 : 1) : (place - leadIn + riseIn / 2) / riseIn;
      double rest = length - place;
      double out =
          riseOut == 0 ? (rest < leadOut ? 0 : 1) : (rest - leadOut + riseOut / 2) / riseOut;
      return Math.max(0, Math.min(1, in)) * Math.max(0, Math.min(1, out));
    }

    void roller(RunOut roller, double phase) {
      rollers.add(new Rolled(roller, phase));
    }

    void shown(double[] stripCurvature, double[] stripShown, int halfSpan) {
      half = halfSpan;
      curvature = stripCurvature;
      shown = stripShown;
    }

    private double at(double[] values, double place) {
      double strip = Math.max(from, Math.min(from + length, from + place));
      int below = (int) Math.min(strip, values.length - 2);
      return values[below] + (strip - below) * (values[below + 1] - values[below]);
    }

    private double mean(double[] values, double fromMm, double toMm) {
      int first = from + (int) Math.ceil(fromMm);
      int last = from + (int) Math.floor(toMm);
      double sum = 0;
      for (int i = first; i <= last; i++) {
        sum += values[i];
      }
      return sum / (last - first + 1);
    }

    private double extreme(double fromMm, double toMm, boolean most) {
      double extreme = shown[from + (int) Math.ceil(fromMm)];
      for (int i = from + (int) Math.ceil(fromMm); i <= from + (int) Math.floor(toMm); i++) {
        extreme = most ? Math.max(extreme, shown[i]) : Math.min(extreme, shown[i]);
      }
      return extreme;
    }

    LineTruth at(double beganSeconds, double leftSeconds) {
      return new LineTruth(this, beganSeconds, leftSeconds);
    }
  }
}
