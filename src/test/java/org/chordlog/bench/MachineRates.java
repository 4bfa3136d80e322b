package org.chordlog.bench;

import java.util.EnumMap;
import java.util.EnumSet;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.apache.commons.math3.random.Well19937c;
import org.chordlog.measure.JobEvent;
import org.chordlog.measure.Recorded;
import org.chordlog.stats.drift.MachineStatistics;
import org.chordlog.stats.drift.MachineVerdict;
import org.chordlog.stats.drift.MachineVerdict.State;

/** Simulated machines of independent normal pieces, and what the verdict on them says. */
public final class MachineRates {
  private static final double SIGMA = 1e-3;
  private static final Set<State> QUIET = EnumSet.of(State.STEADY, State.TOO_FEW);

  /**
   * What happens at a machine, in standard deviations of its pieces: creep per 100 pieces from
   * piece 20 on, or a step at piece 41, with a recorded lot if it has a name. The operator corrects
   * after every so many pieces, or when the mean of the newest five is off by so much (0: never),
   * by that mean.
   */
  public record Course(double creep, double step, String lot, int every, double whenOff) {
    static final int CREEP_FROM = 20;
    static final int STEP_AT = 41;

    public static Course steady() {
      return new Course(0, 0, "", 0, 0);
    }

    public static Course creeping(double creep) {
      return new Course(creep, 0, "", 0, 0);
    }

    public static Course stepping(double step, String lot) {
      return new Course(0, step, lot, 0, 0);
    }

    public Course correctedEach(int pieces) {
      return new Course(creep, step, lot, pieces, whenOff);
    }

    public Course correctedWhenOff(double by) {
      return new Course(creep, step, lot, every, by);
    }
  }

  /** Verdicts by state. */
  public record Said(Map<State, Integer> counts) {
    private int of(State... states) {
      int sum = 0;
      for (State state : states) {
        sum += counts.getOrDefault(state, 0);
      }
      return sum;
    }

    private int all() {
      return counts.values().stream().mapToInt(Integer::intValue).sum();
    }

    /** Verdicts that are not steady. */
    public Rate notSteady() {
      return Rate.of(of(State.CREEPING, State.JUMPED, State.MOVED, State.NEW_LOT), all());
    }

    public Rate share(State state) {
      return Rate.of(of(state), all());
    }

    /** Verdicts named so among those that name creep or jump. */
    public Rate named(State state) {
      return Rate.of(of(state), of(State.CREEPING, State.JUMPED));
    }

    /** Verdicts named creep among all that say the level moved without a lot. */
    public Rate creepOfMoved() {
      return Rate.of(of(State.CREEPING), of(State.CREEPING, State.JUMPED, State.MOVED));
    }

    @Override
    public String toString() {
      return String.format(Locale.ROOT, "%s", counts);
    }
  }

  private MachineRates() {}

  /** At each {@code look} pieces from {@code from} to {@code pieces}. */
  public static Said looks(Course course, int machines, long seed, int from, int pieces, int look) {
    Map<State, Integer> counts = new EnumMap<>(State.class);
    for (int machine = 0; machine < machines; machine++) {
      Run run = new Run(course, seed + machine);
      for (int piece = 1; piece <= pieces; piece++) {
        run.bend(piece);
        if (piece >= from && (piece - from) % look == 0) {
          counts.merge(run.state(), 1, Integer::sum);
        }
      }
    }
    return new Said(counts);
  }

  /** The first verdict that is not steady, looked for at each {@code look} pieces. */
  public static Said first(Course course, int machines, long seed, int pieces, int look) {
    Map<State, Integer> counts = new EnumMap<>(State.class);
    for (int machine = 0; machine < machines; machine++) {
      counts.merge(first(new Run(course, seed + machine), pieces, look), 1, Integer::sum);
    }
    return new Said(counts);
  }

  private static State first(Run run, int pieces, int look) {
    for (int piece = 1; piece <= pieces; piece++) {
      run.bend(piece);
      if (piece > Course.CREEP_FROM && piece % look == 0 && !QUIET.contains(run.state())) {
        return run.state();
      }
    }
    return State.STEADY;
  }

  /** Machines whose verdict at that piece names the lot as the cause of the move. */
  public static Rate lotNamed(double step, int machines, long seed, int piece) {
    Rate rate = new Rate();
    for (int machine = 0; machine < machines; machine++) {
      Run run = new Run(Course.stepping(step, "B"), seed + machine);
      for (int i = 1; i <= piece; i++) {
        run.bend(i);
      }
      rate.add(
          run.verdict().findings().stream()
              .anyMatch(
                  found -> found.lot().equals("B") && found.since().piece() == Course.STEP_AT));
    }
    return rate;
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

    void bend(int piece) {
      if (piece == Course.STEP_AT && !course.lot.isEmpty()) {
        happened(JobEvent.Kind.MATERIAL_LOT, piece);
      }
      correct(piece);
      double value = level(piece) - corrected + SIGMA * random.nextGaussian();
      newest[piece % newest.length] = value;
      sinceCorrection++;
      machine.add(1, piece, piece, value);
      machine.endPiece();
    }

    MachineVerdict verdict() {
      return machine.verdict(null);
    }

    State state() {
      return verdict().state();
    }

    private double level(int piece) {
      double crept = course.creep * Math.max(0, piece - Course.CREEP_FROM) / 100;
      return SIGMA * (crept + (piece >= Course.STEP_AT ? course.step : 0));
    }

    private void correct(int piece) {
      double off = 0;
      for (double each : newest) {
        off += each / newest.length;
      }
      boolean due = course.every > 0 && piece > 1 && (piece - 1) % course.every == 0;
      boolean known = sinceCorrection >= newest.length;
      boolean needed = course.whenOff > 0 && known && Math.abs(off) > course.whenOff * SIGMA;
      if (due || needed) {
        happened(JobEvent.Kind.CORRECTION, piece);
        corrected += off;
        sinceCorrection = 0;
      }
    }

    private void happened(JobEvent.Kind kind, int piece) {
      String lot = kind == JobEvent.Kind.MATERIAL_LOT ? course.lot : "";
      machine.happened(
          new JobEvent(
              ++events,
              1,
              "m",
              kind,
              piece - 1,
              new JobEvent.Content(null, null, lot, ""),
              new Recorded(piece, "me")));
    }
  }
}
