package org.chordlog.verdict;

import java.util.Optional;
import org.chordlog.measure.Sentence;
import org.chordlog.measure.Specification;
import org.chordlog.stats.capability.Figure;
import org.chordlog.stats.capability.Summary;
import org.chordlog.stats.control.ControlVerdict;
import org.jspecify.annotations.Nullable;

/**
 * The three questions asked of a job: in control? capable? gauge good enough? {@code studied} is
 * what a study of its gauge found, null where none was done.
 */
public record JobVerdict(
    Summary summary,
    ControlVerdict controlled,
    Specification specification,
    @Nullable StudiedGauge studied) {
  /** Without a study of the gauge. */
  public JobVerdict(Summary summary, ControlVerdict controlled, Specification specification) {
    this(summary, controlled, specification, null);
  }

  public Statement control() {
    return summary.count() == 0
        ? Statement.of(Tone.QUIET, "No readings yet", "")
        : new ControlStatement(controlled).statement();
  }

  /** Is it capable? A gauge that is too coarse proves nothing. */
  public Statement capability() {
    Statement own = capable().statement();
    boolean coarse = gauge().tone() == Tone.BAD;
    return coarse && own.tone() == Tone.GOOD
        ? new Statement(
            Tone.OPEN,
            "Not proven",
            Sentence.plain("The gauge is too coarse.").and(own.reason()),
            Sentence.EMPTY)
        : own;
  }

  public Statement gauge() {
    return new GaugeVerdict(summary, specification, studied).statement();
  }

  /** The index that the capability is judged by; empty where the readings give none. */
  public Optional<Figure> index() {
    return capable().index();
  }

  private CapabilityVerdict capable() {
    return new CapabilityVerdict(summary, !controlled.notInControl());
  }

  /** The job in one statement: whatever is most urgent of the three. */
  public Statement statement() {
    Statement control = control();
    if (controlled.notInControl()) {
      return control;
    }
    Statement gauge = gauge();
    return gauge.tone() == Tone.BAD ? gauge : capability();
  }
}
