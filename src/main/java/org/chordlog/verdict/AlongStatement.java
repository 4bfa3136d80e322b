package org.chordlog.verdict;

import org.chordlog.measure.Sentence;
import org.chordlog.stats.AlongMeasure;
import org.chordlog.stats.control.ControlVerdict;

/** Are the pieces as even along their length as they were after the last change? */
public record AlongStatement(AlongMeasure measure, ControlVerdict verdict) {
  private static final String OF_RANGE =
      "Look at the newest pieces for the place where they differ: one that stays put comes from the"
          + " setting or the start of the bend, one that moves from a roller or the material.";
  private static final String OF_TREND =
      "Look at the newest pieces for whether their start or their end has changed.";

  /** As of the radius, with what to look at where it is not in control. */
  public Statement statement() {
    Statement said = new ControlStatement(verdict).statement();
    String look = measure == AlongMeasure.RANGE ? OF_RANGE : OF_TREND;
    return verdict.notInControl()
        ? said.withAdvice(Sentence.plain(look + RollerStatement.CAUTION))
        : said;
  }
}
