package org.chordlog.study;

import java.util.List;
import org.chordlog.measure.BadInput;

/** Repeatability of one operator on several parts; says nothing of operators. */
public final class OneOperatorStudy {
  private static final NestedAnova.Names NAMES = new NestedAnova.Names("operator", "piece");

  private OneOperatorStudy() {}

  public static StudyResult of(List<StudyReading> readings, StudySettings settings) {
    CrossedTable table = table(readings);
    NestedAnova anova = anova(table);
    VarianceComponents components = anova.components(Source.OPERATOR);
    Findings findings = new Findings(StudyKind.ONE_OPERATOR, table.size());
    findings
        .anova(anova.rows())
        .figures(new GaugeFigures(components, table.cells().mean(), settings).figures());
    findings.order(table.cells().readings());
    findings.caution("One operator: what operators add to the gauge is not in these figures.");
    Cautions.of(findings, components, settings);
    return findings.result();
  }

  /** The components that the decision rests on. */
  public static VarianceComponents components(List<StudyReading> readings) {
    return anova(table(readings)).components(Source.OPERATOR);
  }

  private static NestedAnova anova(CrossedTable table) {
    double[][][] parts = new double[1][][];
    parts[0] = java.util.Arrays.stream(table.values()).map(row -> row[0]).toArray(double[][]::new);
    return NestedAnova.of(parts, NAMES);
  }

  private static CrossedTable table(List<StudyReading> readings) {
    CrossedTable table = CrossedTable.of(readings);
    if (table.operators().size() > 1) {
      String given = String.join(", ", table.operators());
      throw new BadInput("operator", given, "are several", "one operator, or a crossed study");
    }
    if (table.repeats() < 2) {
      throw new BadInput("repeat", 1, "is too few to see repeatability", "2 or more repeats");
    }
    return table;
  }
}
