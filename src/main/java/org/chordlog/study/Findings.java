package org.chordlog.study;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.chordlog.measure.Capital;
import org.chordlog.measure.Sentence;
import org.chordlog.study.StudyFigure.Judged;
import org.chordlog.study.StudyResult.Alternative;
import org.chordlog.study.StudyResult.Conclusion;
import org.chordlog.study.StudyResult.Size;

/** Gathers what a study finds. */
final class Findings {
  /** Of figures that decide: of many masters each may. */
  static final int MOST_NAMED = 5;

  private final StudyKind kind;
  private final Size size;
  private final List<StudyFigure> figures = new ArrayList<>();
  private final List<AnovaRow> anova = new ArrayList<>();
  private final List<StudyTest> tests = new ArrayList<>();
  private final List<Alternative> alternatives = new ArrayList<>();
  private final List<String> cautions = new ArrayList<>();

  Findings(StudyKind kind, Size size) {
    this.kind = kind;
    this.size = size;
  }

  Findings figure(StudyFigure figure) {
    figures.add(figure);
    return this;
  }

  Findings figures(List<StudyFigure> more) {
    figures.addAll(more);
    return this;
  }

  Findings anova(List<AnovaRow> rows) {
    anova.addAll(rows);
    return this;
  }

  Findings test(StudyTest test) {
    tests.add(test);
    return this;
  }

  /** A change with the order of measuring is a caution too. */
  Findings order(List<StudyReading> readings) {
    OrderTest.of(readings)
        .ifPresent(
            test -> {
              tests.add(test);
              if (test.found()) {
                cautions.add(0, test.says());
              }
            });
    return this;
  }

  Findings alternative(String name, List<StudyFigure> other) {
    alternatives.add(new Alternative(name, other));
    return this;
  }

  Findings caution(String sentence) {
    cautions.add(sentence);
    return this;
  }

  StudyResult result() {
    return new StudyResult(kind, size, figures, anova, tests, alternatives, conclusion(), cautions);
  }

  private Conclusion conclusion() {
    List<StudyFigure> judged = figures.stream().filter(each -> each.judged() != null).toList();
    if (judged.isEmpty()) {
      return new Conclusion(
          StudyVerdict.UNDECIDED, Sentence.plain("No limit applies to these figures."));
    }
    StudyVerdict worst =
        judged.stream().map(Findings::verdict).reduce(StudyVerdict.PASSES, StudyVerdict::worse);
    List<StudyFigure> decisive = judged.stream().filter(each -> each.decides(worst)).toList();
    return new Conclusion(worst, sentence(worst, decisive));
  }

  private static Sentence sentence(StudyVerdict verdict, List<StudyFigure> decisive) {
    Sentence named =
        Sentence.joined("; ", decisive.stream().limit(MOST_NAMED).map(Findings::words).toList());
    int more = decisive.size() - MOST_NAMED;
    return Sentence.of(
        "%s: %s%s.",
        Capital.of(verdict.words()),
        named,
        more <= 0 ? "" : more == 1 ? "; and 1 more" : "; and " + more + " more");
  }

  private static Sentence words(StudyFigure figure) {
    return Sentence.of(
        "%s is %s, wanted %s",
        figure.words(), Numbers.told(figure), Objects.requireNonNull(figure.judged()).criterion());
  }

  private static StudyVerdict verdict(StudyFigure figure) {
    Judged judged = figure.judged();
    return judged == null ? StudyVerdict.PASSES : judged.verdict();
  }
}
