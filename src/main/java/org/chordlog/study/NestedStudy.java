package org.chordlog.study;

import java.util.List;
import org.chordlog.measure.BadInput;
import org.chordlog.study.StudyResult.Size;

/**
 * Every operator measures parts of their own, as where a part springs, relaxes or is changed by
 * being measured.
 */
public final class NestedStudy {
  private static final NestedAnova.Names NAMES = new NestedAnova.Names("operator", "piece");

  private NestedStudy() {}

  /**
   * With {@code otherPieces} each repeat was another piece of the same lot and setting, so that the
   * repeatability contains the pieces' own differences and is an upper bound for the gauge: it can
   * pass, never fail.
   */
  public static StudyResult of(
      List<StudyReading> readings, boolean otherPieces, StudySettings settings) {
    NestedTable table = table(readings);
    NestedAnova anova = NestedAnova.of(table.values(), NAMES);
    VarianceComponents components = anova.components(Source.OPERATOR);
    Findings findings = new Findings(StudyKind.NESTED, size(table));
    List<StudyFigure> figures =
        new GaugeFigures(components, table.cells().mean(), settings).figures();
    findings
        .anova(anova.rows())
        .figures(otherPieces ? figures.stream().map(StudyFigure::asBound).toList() : figures);
    findings.caution(
        otherPieces
            ? "Each repeat is another piece: repeatability contains the pieces' own differences"
                + " within a lot, so the gauge is at most what is shown."
            : "Pieces are compared within operators only: a piece that changes while it is measured"
                + " adds to the repeatability.");
    Cautions.of(findings, components, settings);
    Cautions.fewOperators(findings, table.groups().size());
    return findings.result();
  }

  /** The components that the decision rests on. */
  public static VarianceComponents components(List<StudyReading> readings) {
    return NestedAnova.of(table(readings).values(), NAMES).components(Source.OPERATOR);
  }

  private static NestedTable table(List<StudyReading> readings) {
    NestedTable table = NestedTable.of(readings);
    Cells.atLeast("operator", table.groups(), 2, " operators, or the study of one operator");
    if (table.members() < 2) {
      throw new BadInput("part", 1, "is too few with each operator", "2 or more pieces");
    }
    if (table.cells().repeats() < 2) {
      throw new BadInput("repeat", 1, "is too few to see repeatability", "2 or more repeats");
    }
    return table;
  }

  private static Size size(NestedTable table) {
    return new Size(
        table.groups().size() * table.members(),
        table.groups().size(),
        table.cells().repeats(),
        design(table));
  }

  private static String design(NestedTable table) {
    return table.groups().size()
        + " operators × "
        + table.members()
        + " pieces each × "
        + table.cells().repeats()
        + " repeats";
  }
}
