package org.chordlog.study;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.chordlog.measure.Sentence;

/**
 * What a study found. {@code figures} hold the decision; {@code alternatives} are the same figures
 * under another reading of the same data, shown beside; {@code verdict} is the worst of the judged
 * figures' verdicts and {@code says} gives it in a sentence.
 */
public record StudyResult(
    StudyKind kind,
    Size size,
    List<StudyFigure> figures,
    List<AnovaRow> anova,
    List<StudyTest> tests,
    List<Alternative> alternatives,
    Conclusion conclusion,
    List<String> cautions) {
  /** Names of the figures that are read first. */
  private static final Set<String> MAIN =
      Set.of(
          "GRR",
          "percentGRR",
          "percentToleranceGRR",
          "ndcUnrounded",
          "EV",
          "AV",
          "IA",
          "PV",
          "bias",
          "standardDeviation",
          "byEye",
          "marked",
          "placing",
          "percentToleranceByEye",
          "level1",
          "level2",
          "days",
          "oneReading",
          "drift",
          "Cg",
          "Cgk",
          "slope",
          "intercept");

  /**
   * Counts of what was measured: parts (or masters, or days), operators (or runs; 1 where there are
   * none), readings in each cell; {@code words} gives the design in plain words.
   */
  public record Size(int parts, int operators, int repeats, String words) {}

  /** Figures under another model. */
  public record Alternative(String name, List<StudyFigure> figures) {
    public Alternative {
      figures = List.copyOf(figures);
    }
  }

  /** The verdict and why, in one sentence. */
  public record Conclusion(StudyVerdict verdict, Sentence says) {}

  public StudyResult {
    figures = List.copyOf(figures);
    anova = List.copyOf(anova);
    tests = List.copyOf(tests);
    alternatives = List.copyOf(alternatives);
    cautions = List.copyOf(cautions);
  }

  /** The same with those figures beside, under that name. */
  public StudyResult beside(String name, List<StudyFigure> other) {
    List<Alternative> more = new ArrayList<>(alternatives);
    more.add(new Alternative(name, other));
    return new StudyResult(kind, size, figures, anova, tests, more, conclusion, cautions);
  }

  public String design() {
    return size.words();
  }

  /** The figures that are read first, on a page and in print, with those that decide. */
  public List<StudyFigure> mainFigures() {
    Set<StudyFigure> decisive =
        figures.stream()
            .filter(each -> !MAIN.contains(each.name()) && each.decides(conclusion.verdict()))
            .limit(Findings.MOST_NAMED)
            .collect(Collectors.toSet());
    return figures.stream()
        .filter(each -> MAIN.contains(each.name()) || decisive.contains(each))
        .toList();
  }

  /** Whether parts are seen to change while they are measured, so that they can't be crossed. */
  public boolean partsMove() {
    return tests.stream().anyMatch(each -> each.name().startsWith(OrderTest.NAME) && each.found());
  }

  /** The figure of that name; empty where the study has none. */
  public Optional<StudyFigure> figure(String name) {
    return figures.stream().filter(figure -> figure.name().equals(name)).findFirst();
  }
}
