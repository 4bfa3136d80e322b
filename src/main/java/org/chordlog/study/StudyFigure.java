package org.chordlog.study;

import org.chordlog.measure.Decimals;
import org.chordlog.measure.Sentence;
import org.jspecify.annotations.Nullable;

/**
 * One figure of a study with its interval at {@code confidence}; an end that is null is unbounded
 * or of no use. {@code words} is the name in plain English; {@code method} says how value and
 * interval are made; {@code judged} is null where no limit applies.
 */
public record StudyFigure(
    String name,
    Sentence words,
    @Nullable Double value,
    @Nullable Double lower,
    @Nullable Double upper,
    @Nullable Double confidence,
    String unit,
    String method,
    String source,
    @Nullable Judged judged) {

  /** The verdict on a figure and the limit it was held against, in words. */
  public record Judged(StudyVerdict verdict, Sentence criterion) {}

  StudyFigure atMost(double limit, String sign) {
    Sentence criterion = Sentence.of("at most %s%s", Decimals.significant(limit), sign);
    return with(new Judged(StudyVerdict.atMost(lower, upper, limit), criterion));
  }

  StudyFigure atLeast(double limit) {
    Sentence criterion = Sentence.of("at least %s", Decimals.significant(limit));
    return with(new Judged(StudyVerdict.atLeast(lower, upper, limit), criterion));
  }

  /** Of what is known to be at most this: it can pass, never fail. */
  StudyFigure asBound() {
    return judged != null && decides(StudyVerdict.FAILS)
        ? with(new Judged(StudyVerdict.UNDECIDED, judged.criterion()))
        : this;
  }

  /** Whether that verdict, of a whole study, is this figure's too. */
  boolean decides(StudyVerdict verdict) {
    return judged != null && judged.verdict() == verdict;
  }

  StudyFigure with(Judged verdict) {
    return new StudyFigure(
        name, words, value, lower, upper, confidence, unit, method, source, verdict);
  }

  StudyFigure withoutUpper() {
    return new StudyFigure(
        name, words, value, lower, null, confidence, unit, method, source, judged);
  }
}
