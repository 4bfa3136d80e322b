package org.chordlog.bench;

import java.util.EnumMap;
import java.util.Map;
import org.apache.commons.math3.random.Well19937c;
import org.chordlog.measure.JobEvent;
import org.chordlog.stats.drift.MachineStatistics;
import org.chordlog.stats.drift.MachineVerdict;
import org.chordlog.stats.drift.MachineVerdict.State;

/**
 * Simulated machines of independent normal pieces (their standard deviation is 1 per mille), and
 * what the verdict on them says.
 */
public final class MachineRates {
  private static final double SIGMA = 1e-3;

  /**
   * What happens at a machine: creep in standard deviations per 100 pieces from a piece on, a step
   * at a piece; the operator corrects after every so many pieces (0: never) by what the mean of the
   * newest five is off, or when it is off by so many standard deviations.
   */
  public record Course(
      double creep,
      int creepFrom,
      double step,
      int stepAt,
      int every,
      double whenOff,
      String lot) {}

  /** Verdicts by state, at each {@code look} pieces up to {@code pieces}. */
  public static Map<State, Integer> states(
      Course course, int machines, long seed, int pieces, int look, int from, boolean firstOnly) {
    Map<State, Integer> counts = new EnumMap<>(State.class);
    for (int machine = 0; machine < machines; machine++) {
      new Run(course, seed + machine).play(pieces, look, from, firstOnly, counts);
    }
    return counts;
  }

  private static final class Run {
    private final Course course;
    private final Well19937c random;
    private final MachineStatistics machine = new MachineStatistics();
    private final double[] newest = new double[5];
    private double corrected;
    private int sinceCorrection;
    private long events;

    Run(Course course, long seed) {
      this.course = course;
      random = new Well19937c(seed);
    }

    void play(int pieces, int look, int from, boolean firstOnly, Map<State, Integer> counts) {
      for (int piece = 1; piece <= pieces; piece++) {
        if (piece == course.stepAt && !course.lot.isEmpty()) {
          happened(JobEvent.Kind.MATERIAL_LOT, piece);
        }
        correct(piece);
        double value = level(piece) - corrected + SIGMA * random.nextGaussian();
        newest[piece % newest.length] = value;
        sinceCorrection++;
        machine.add(1, piece, piece, value);
        machine.endPiece();
        if (piece % look == 0 && piece >= from) {
          MachineVerdict verdict = machine.verdict(null);
          boolean quiet = verdict.state() == State.STEADY || verdict.state() == State.TOO_FEW;
          if (!firstOnly || !quiet) {
            counts.merge(verdict.state(), 1, Integer::sum);
          }
          if (firstOnly && !quiet) {
            return;
          }
        }
      }
      if (firstOnly) {
        counts.merge(State.STEADY, 1, Integer::sum);
      }
    }

    private double level(int piece) {
      double crept = SIGMA * course.creep * Math.max(0, piece - course.creepFrom) / 100;
      return crept + (piece >= course.stepAt ? SIGMA * course.step : 0);
    }

    private void correct(int piece) {
      double off = 0;
      for (double each : newest) {
        off += each / newest.length;
      }
      boolean due = course.every > 0 && piece > 1 && (piece - 1) % course.every == 0;
      boolean needed =
          course.whenOff > 0
              && sinceCorrection >= newest.length
              && Math.abs(off) > course.whenOff * SIGMA;
      if (due || needed) {
        happened(JobEvent.Kind.CORRECTION, piece);
        corrected += off;
        sinceCorrection = 0;
      }
    }

    private void happened(JobEvent.Kind kind, int piece) {
      String lot = kind == JobEvent.Kind.MATERIAL_LOT ? course.lot : "";
      machine.happened(
          new JobEvent(++events, 1, "m", kind, piece - 1, piece, null, null, lot, "", "me"));
    }
  }
}
