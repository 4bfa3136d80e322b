package org.chordlog.cli.correction;

import java.util.List;
import org.chordlog.correction.Advice;
import org.chordlog.correction.Advice.Correct;
import org.chordlog.correction.Advice.TooEarly;
import org.chordlog.correction.CorrectionSnapshot;
import org.chordlog.correction.LevelEstimate;
import org.chordlog.correction.Notice;
import org.chordlog.measure.Lengths;
import org.chordlog.measure.Sentence;
import org.jspecify.annotations.Nullable;

/**
 * Advice as JSON; amounts in the unit of the machine's scale, level as radius less target. Texts
 * say lengths in the command's unit.
 */
record AdviceAnswer(
    Advice.Action action,
    @Nullable Double amount,
    @Nullable Double amountStandardUncertainty,
    @Nullable Double levelMm,
    @Nullable Double levelStandardUncertaintyMm,
    String text,
    @Nullable Prospect prospect,
    @Nullable Integer morePieces,
    List<Said> notices) {
  /** What a correction is expected to do; {@code setTo}: the number to set, where it is known. */
  record Prospect(
      double radiusMm, double outBefore, double outAfter, double chance, @Nullable Double setTo) {
    static Prospect of(Correct advice) {
      Advice.Prospect found = advice.prospect();
      return new Prospect(
          found.radiusMm(),
          found.outBefore(),
          found.outAfter(),
          found.chance(),
          advice.move().to());
    }
  }

  /** Something to be told or asked beside it. */
  record Said(Notice.Kind kind, String text, @Nullable Double amount) {}

  static AdviceAnswer of(CorrectionSnapshot now, Lengths lengths) {
    Advice advice = now.advice();
    LevelEstimate level = advice.level();
    boolean known = level != null && Double.isFinite(level.levelMm());
    return new AdviceAnswer(
        advice.action(),
        advice.amount(),
        advice.amountStandardUncertainty(),
        level == null || !known ? null : (Double) level.levelMm(),
        level == null || !known ? null : (Double) level.standardUncertaintyMm(),
        plain(advice.text(), lengths),
        advice instanceof Correct correct ? Prospect.of(correct) : null,
        advice instanceof TooEarly early ? (Integer) early.morePieces() : null,
        now.notices().stream()
            .map(each -> new Said(each.kind(), plain(each.text(), lengths), each.amount()))
            .toList());
  }

  /** Terminals and other programs get spaces that are nothing but spaces. */
  private static String plain(Sentence text, Lengths lengths) {
    return text.in(lengths).replace('\u00a0', ' ');
  }
}
