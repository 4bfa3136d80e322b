package org.chordlog.verdict;

import org.chordlog.correction.Advice;
import org.chordlog.measure.Decision;
import org.chordlog.measure.RadiusEstimate;
import org.chordlog.measure.Sentence;
import org.chordlog.measure.Specification;

/**
 * A reading judged against the limits in force, with what the operator should do. What makes the
 * gauge or the process unreliable outranks a good piece: then the rollers are never left alone on
 * the strength of this reading.
 */
public record PieceVerdict(
    RadiusEstimate radius, Specification specification, Decision decision, StationVerdict station) {
  static final String LEAVE = "Leave the rollers as they are.";
  private static final Sentence AGAIN = Sentence.plain("Measure it again.");

  /** Of the gauge in doubt before of the piece. */
  public Statement statement() {
    Statement own = ofPiece();
    return station
        .firstForbidding()
        .map(finding -> own.withAdvice(Sentence.plain("Don't act on it: " + finding.said() + ".")))
        .orElse(own);
  }

  /**
   * With what to do at the rollers in place of leaving them, where a good piece alone would say so.
   * A piece that is out and stands out from those before is measured again before anything is done
   * to it.
   */
  public Statement statement(Advice rollers) {
    Statement own = statement();
    if (!station.reliable()) {
      return own;
    }
    return switch (decision) {
      case CONFORMS, NO_LIMITS -> rollers.act().isEmpty() ? own : own.withAdvice(rollers.act());
      case DOES_NOT_CONFORM -> rollers instanceof Advice.MeasureAgain ? own.withAdvice(AGAIN) : own;
      case UNDECIDED -> own;
    };
  }

  private Statement ofPiece() {
    return switch (decision) {
      case CONFORMS -> good();
      case DOES_NOT_CONFORM -> outside();
      case UNDECIDED ->
          new Statement(
              Tone.OPEN,
              Words.of(decision),
              Sentence.plain(
                  "A limit lies within the uncertainty of this reading."
                      + " If that stays so, ask for a finer measurement."),
              AGAIN);
      case NO_LIMITS ->
          Statement.of(Tone.QUIET, Words.of(decision), "This job has only a target to aim for.");
    };
  }

  private Statement good() {
    if (station.has(StationIssue.MACHINE_MOVED) && !station.has(StationIssue.NOT_IN_CONTROL)) {
      return new Statement(
          Tone.GOOD,
          Words.of(decision),
          "This piece is within its limits, but the machine is not steady.",
          "Watch the next pieces.");
    }
    return station.has(StationIssue.NOT_IN_CONTROL)
        ? new Statement(
            Tone.OPEN,
            Words.of(decision),
            Sentence.plain("This piece is within its limits, but the process is not in control."),
            StationIssue.NOT_IN_CONTROL.statement().advice())
        : new Statement(Tone.GOOD, Words.of(decision), "", LEAVE);
  }

  private Statement outside() {
    Deviation way = Deviation.of(radius, specification);
    String advice = way == Deviation.TOO_WIDE ? "Roll it again." : "Ask before you go on.";
    return new Statement(Tone.BAD, way.word(), "Out of tolerance: " + way.need() + ".", advice);
  }
}
