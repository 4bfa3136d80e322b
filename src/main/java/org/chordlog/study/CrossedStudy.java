package org.chordlog.study;

import java.util.List;
import org.chordlog.measure.Decimals;

/**
 * Every operator measures every part, by analysis of variance. The interaction is kept as a
 * component or pooled with the repeatability, by its p-value; the other of the two is given beside
 * it as an alternative.
 */
public final class CrossedStudy {
  private static final String KEPT = "interaction kept";
  private static final String POOLED = "interaction pooled with repeatability";
  private final CrossedAnova anova;
  private final double mean;
  private final StudySettings settings;
  private final Findings findings;

  private CrossedStudy(CrossedTable table, StudySettings settings) {
    anova = CrossedAnova.of(table);
    mean = table.cells().mean();
    this.settings = settings;
    findings = new Findings(StudyKind.CROSSED, table.size());
    findAll();
    findings.order(table.cells().readings());
  }

  /** {@link org.chordlog.measure.BadInput} for a missing cell or a single operator. */
  public static StudyResult of(List<StudyReading> readings, StudySettings settings) {
    return new CrossedStudy(CrossedTable.ofSeveralOperators(readings), settings).findings.result();
  }

  /** The components that the decision rests on. */
  public static VarianceComponents components(List<StudyReading> readings, StudySettings settings) {
    CrossedStudy study = new CrossedStudy(CrossedTable.ofSeveralOperators(readings), settings);
    return study.pools() ? study.anova.pooledComponents() : study.anova.withInteraction();
  }

  private boolean pools() {
    return anova.interactionP() > settings.evaluation().poolingLevel();
  }

  private void findAll() {
    VarianceComponents kept = anova.withInteraction();
    if (anova.repeat() == null) {
      findings.anova(anova.rows(false)).figures(figures(kept));
      findings.caution("One repeat: repeatability contains the interaction of operator and piece.");
    } else if (pools()) {
      findings.anova(anova.rows(true)).figures(figures(anova.pooledComponents()));
      findings.alternative(KEPT, figures(kept));
    } else {
      findings.anova(anova.rows(false)).figures(figures(kept));
      findings.alternative(POOLED, figures(anova.pooledComponents()));
    }
    interaction();
    Cautions.of(findings, pools() ? anova.pooledComponents() : kept, settings);
    Cautions.fewOperators(findings, anova.size().operators());
  }

  private List<StudyFigure> figures(VarianceComponents components) {
    return new GaugeFigures(components, mean, settings).figures();
  }

  private void interaction() {
    MeanSquare repeat = anova.repeat();
    double p = anova.interactionP();
    if (repeat == null || Double.isNaN(p)) {
      return;
    }
    MeanSquare both = anova.interaction();
    double f = both.value() / repeat.value();
    String says =
        "p "
            + Numbers.probability(p)
            + (pools() ? " above " : " at most ")
            + Decimals.significant(settings.evaluation().poolingLevel())
            + ": "
            + (pools() ? POOLED : KEPT)
            + ".";
    findings.test(
        new StudyTest(
            "interaction", f, both.degreesOfFreedom(), repeat.degreesOfFreedom(), p, says));
  }
}
