package org.chordlog.measure;

import java.util.List;

/**
 * A study of the gauge done at a station: who measures what how often, on what, and how far it is.
 * Its steps are numbered from 1; the seed fixes their order. Its measurements are never readings of
 * a job.
 */
public record GaugeStudy(
    long id, String station, String name, Design design, Subject subject, State state, Made made) {
  /** The two ways of placing that a study of placing compares. */
  public static final String BY_EYE = "by eye";

  public static final String ON_MARK = "on the mark";

  /** Readings of two days are at least so far apart, so that one shift is not taken for two. */
  public static final long NEXT_DAY_MICROS = 8 * 3_600_000_000L;

  /** What is examined. */
  public enum Kind {
    /** Every operator measures every piece. */
    CROSSED,
    /** The same with marked places on each piece. */
    SPLIT,
    /** Each operator measures pieces of their own. */
    NESTED,
    /** The same where each repeat is another piece, bent in one lot at one setting. */
    LOTS,
    ONE_OPERATOR,
    /** One operator, the place found by eye against the place marked. */
    PLACING,
    BIAS,
    LINEARITY,
    /** One master over days; the parts are days. */
    STABILITY,
    TYPE1;

    /** On masters instead of pieces. */
    public boolean onMasters() {
      return onMasterEach() || this == STABILITY;
    }

    /** On masters, each of them a part. */
    public boolean onMasterEach() {
      return this == BIAS || this == LINEARITY || this == TYPE1;
    }

    /** Compares operators. */
    public boolean severalOperators() {
      return this == CROSSED || this == SPLIT || ownParts();
    }

    /** The parts are shared among the operators, in the order of both. */
    public boolean ownParts() {
      return this == NESTED || this == LOTS;
    }
  }

  /** While it is running, what its station captures belongs to it and to no job. */
  public enum State {
    PAUSED,
    RUNNING,
    DONE,
    ABANDONED;

    /** Whether no more is measured for it. */
    public boolean ended() {
      return this == DONE || this == ABANDONED;
    }
  }

  /**
   * {@code parts} are pieces, lots, masters or days; {@code places} is empty where a part is one
   * place.
   */
  public record Design(
      Kind kind,
      List<String> parts,
      List<String> places,
      List<String> operators,
      int repeats,
      long seed) {
    private static final int MOST_STEPS = 2_000;

    public Design {
      parts = List.copyOf(parts);
      places = List.copyOf(places);
      operators = List.copyOf(operators);
      if (parts.isEmpty() || operators.isEmpty()) {
        throw new BadInput(
            parts.isEmpty() ? "parts" : "operators", "none", "is named", "one name or more");
      }
      Check.within("repeats", repeats, 1, 100);
      long cells = (long) parts.size() * Math.max(1, places.size());
      long steps = cells * (kind.ownParts() ? 1 : operators.size()) * repeats;
      Check.within("measurements", steps, 2, MOST_STEPS);
    }

    /** How many measurements the design asks for. */
    public int steps() {
      int cells = parts.size() * Math.max(1, places.size());
      return cells * (kind.ownParts() ? 1 : operators.size()) * repeats;
    }

    /**
     * Whether another day begins with that step, counted from 1; it may be taken {@link
     * #NEXT_DAY_MICROS} after the step before it.
     */
    public boolean beginsDay(int step) {
      return kind == Kind.STABILITY && step > 1 && (step - 1) % repeats == 0;
    }
  }

  /** What is measured: pieces of that section to those limits, or masters in the parts' order. */
  public record Subject(
      Section section, Face measuredFace, Specification specification, List<Master> masters) {
    public Subject {
      masters = List.copyOf(masters);
    }
  }

  /** When and by whom it was planned. */
  public record Made(long atMicros, String by) {}

  public GaugeStudy {
    Check.text("station", station);
    Check.text("name", name);
    if (design.kind().onMasterEach() && design.parts().size() != subject.masters().size()) {
      throw new BadInput("masters", subject.masters().size(), "do not fit the parts", "one each");
    }
  }

  /** The same study under another id. */
  public GaugeStudy withId(long other) {
    return new GaugeStudy(other, station, name, design, subject, state, made);
  }

  /** The same study in another state. */
  public GaugeStudy become(State other) {
    return new GaugeStudy(id, station, name, design, subject, other, made);
  }
}
