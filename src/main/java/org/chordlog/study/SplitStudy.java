package org.chordlog.study;

import java.util.List;

/**
 * Every operator measures the same marked places on every piece, so that variation along a piece is
 * told from variation between pieces and neither counts as gauge.
 */
public final class SplitStudy {
  /** How place names are taken. */
  public enum Places {
    /** Fixed positions where all pieces have the same names, else marks. */
    AS_NAMED,
    /** Marks chosen at random on each piece, whatever their names. */
    MARKS
  }

  private SplitStudy() {}

  public static StudyResult of(List<StudyReading> readings, Places places, StudySettings settings) {
    SplitTable table = SplitTable.of(readings);
    SplitAnova anova = anova(table, places);
    VarianceComponents components = anova.components();
    Findings findings = new Findings(StudyKind.SPLIT, table.size());
    findings
        .anova(anova.rows())
        .figures(new GaugeFigures(components, table.cells().mean(), settings).figures());
    if (anova.name() != null) {
      findings.caution(
          "Places have the same names on all pieces: their common difference is a line of its own"
              + " and not part of the places' scatter.");
    }
    findings.order(table.cells().readings());
    Cautions.of(findings, components, settings);
    Cautions.fewOperators(findings, table.operators().size());
    return findings.result();
  }

  /** The components that the decision rests on. */
  public static VarianceComponents components(List<StudyReading> readings, Places places) {
    return anova(SplitTable.of(readings), places).components();
  }

  private static SplitAnova anova(SplitTable table, Places places) {
    return SplitAnova.of(table.values(), table.named() && places == Places.AS_NAMED);
  }
}
