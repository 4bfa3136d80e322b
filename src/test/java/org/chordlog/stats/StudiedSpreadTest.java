package org.chordlog.stats;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.apache.commons.math3.random.Well19937c;
import org.chordlog.stats.capability.Figure;
import org.chordlog.stats.capability.FigureKind;
import org.chordlog.stats.capability.StudiedSpread;
import org.chordlog.stats.capability.Summary;
import org.chordlog.stats.control.ChartSettings;
import org.chordlog.stats.control.Limits;
import org.chordlog.stats.control.Observation;
import org.chordlog.stats.control.Scope;
import org.junit.jupiter.api.Test;

/** Pieces of deviation 1, a gauge of 0.75 whose budget knows of a part of that only. */
final class StudiedSpreadTest {
  private static final double STATED = 0.2;

  private static Summary pieces(double stated) {
    Well19937c random = new Well19937c(3);
    JobStatistics job =
        new JobStatistics(Data.plan(1, new Limits(-4.0, 4.0, null), ChartSettings.usual()));
    for (int id = 1; id <= 20_000; id++) {
      double value = random.nextGaussian() + 0.75 * random.nextGaussian();
      job.add(new Observation(id, id, "middle", id, value, stated));
    }
    return job.summary("middle", Scope.JOB);
  }

  private static Figure figure(Summary summary, FigureKind kind) {
    return summary.figure(kind).orElseThrow();
  }

  /** σ² = σ_pieces² + σ_gauge². */
  @Test
  void indicesAreThoseOfThePiecesThemselves() {
    Summary told = new StudiedSpread("spring", 0.75, 0.5, 1.2).in(pieces(STATED));
    assertEquals(4.0 / 3, Data.value(told, "PpWithoutGauge"), 0.03);
    assertEquals(4.0 / 3, Data.value(told, "CpWithoutGauge"), 0.03);
    assertTrue(Data.value(told, "PpkWithoutGauge") <= Data.value(told, "PpWithoutGauge"));
    assertEquals(100 * 6 * 0.75 / 8, Data.value(told, "gaugeShare"), 1e-9);
    assertEquals(0.5, figure(told, FigureKind.GAUGE).lower());
    assertEquals("by the gauge study spring", figure(told, FigureKind.GAUGE).method());
    assertTrue(figure(told, FigureKind.PPK_PIECES).method().endsWith("study spring"));
  }

  /** The same digits as where the readings' budgets state what the study found. */
  @Test
  void aStudyThatAgreesWithTheBudgetChangesNoValue() {
    Summary stated = pieces(0.75);
    Summary told = new StudiedSpread("spring", 0.75, null, null).in(stated);
    assertEquals(stated.figures().size(), told.figures().size());
    for (Figure each : stated.figures()) {
      Double value = each.value();
      if (value != null) {
        assertEquals(value, Data.value(told, each.name()), 1e-9 * Math.abs(value), each.name());
      }
    }
  }

  @Test
  void aGaugeThatScattersMoreThanAllReadingsLeavesNoIndex() {
    Summary told = new StudiedSpread("spring", 2, null, null).in(pieces(STATED));
    Figure index = figure(told, FigureKind.PPK_PIECES);
    assertNull(index.value());
    assertTrue(index.method().contains("covers all of the spread"), index.method());
  }

  @Test
  void whatSaysNothingOfAGaugeStaysAsItIs() {
    Summary without = pieces(0);
    assertEquals(without, new StudiedSpread("spring", 0.75, null, null).in(without));
  }
}
