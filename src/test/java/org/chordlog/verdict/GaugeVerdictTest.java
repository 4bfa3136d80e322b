package org.chordlog.verdict;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.chordlog.measure.Face;
import org.chordlog.measure.Specification;
import org.chordlog.stats.capability.Summary;
import org.chordlog.stats.control.Scope;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** A study of the gauge decides by its whole interval; 24 mm of tolerance, so 1 mm is 25 %. */
final class GaugeVerdictTest {
  private static final Specification ASKED = new Specification(Face.OUTER, 1800, 1788.0, 1812.0);
  private static final Summary NOTHING = new Summary("end", Scope.JOB, 0, List.of(), List.of());

  private static Statement judged(double sigma, @Nullable Double lower, @Nullable Double upper) {
    return new GaugeVerdict(NOTHING, ASKED, new StudiedGauge("spring", sigma, lower, upper))
        .statement();
  }

  @Test
  void theWholeIntervalDecides() {
    assertEquals("Gauge good enough", judged(0.3, 0.2, 0.5).word());
    assertEquals("Gauge acceptable", judged(0.8, 0.6, 1.1).word());
    assertEquals("Gauge not proven", judged(0.8, 0.6, 2.4).word());
    assertEquals("Gauge not proven", judged(0.8, 0.6, null).word());
    assertEquals("Gauge too coarse", judged(2.0, 1.3, 9.0).word());
    assertEquals(Tone.BAD, judged(2.0, 1.3, null).tone());
  }

  @Test
  void theStudyIsNamedWithItsInterval() {
    String reason = judged(0.8, 0.4, 2.4).reason().toString();
    assertTrue(reason.contains("spring it takes 20 % of the tolerance (10 to 60)"), reason);
    assertTrue(judged(0.8, 0.4, null).reason().toString().contains("10 to open"));
  }

  /** dR = R² dκ: at twice the radius the same curvature is four times the mm. */
  @Test
  void aStudyAtAnotherRadiusIsToldAtTheJobs() {
    StudiedGauge there = new StudiedGauge("spring", 0.5, 0.25, null).at(900, 1800);
    assertEquals(new StudiedGauge("spring", 2.0, 1.0, null), there);
  }

  @Test
  void withoutAStudyAndReadingsItIsNotJudged() {
    assertEquals("Gauge not judged", new GaugeVerdict(NOTHING, ASKED, null).statement().word());
  }
}
