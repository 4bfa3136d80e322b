package org.chordlog.stats;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import org.chordlog.measure.SubgroupRule;
import org.chordlog.stats.capability.Figure;
import org.chordlog.stats.capability.FigureKind;
import org.chordlog.stats.capability.Summary;
import org.chordlog.stats.control.ChartSettings;
import org.chordlog.stats.control.Limits;
import org.chordlog.stats.control.Observation;
import org.chordlog.stats.control.Scope;
import org.chordlog.stats.control.StatisticsPlan;
import org.junit.jupiter.api.Test;

/** Every figure that the statistics give has a name and a meaning in words. */
final class FigureKindTest {
  @Test
  void noFigureIsWithoutWords() {
    assertEquals(List.of(), nameless(false));
    assertEquals(List.of(), nameless(true));
  }

  @Test
  void howAnIntervalIsFoundIsSaidOnce() {
    for (boolean skewed : new boolean[] {false, true}) {
      for (Figure figure : summary(skewed).figures()) {
        assertTrue(figure.method().split("interval ", -1).length <= 2, figure::toString);
      }
    }
  }

  private static List<String> nameless(boolean skewed) {
    return summary(skewed).figures().stream()
        .map(figure -> figure.name())
        .filter(name -> FigureKind.named(name).isEmpty())
        .toList();
  }

  /** Normal readings, or skewed ones (Johnson SU), which bring the percentile figures along. */
  private static Summary summary(boolean skewed) {
    StatisticsPlan plan =
        new StatisticsPlan(
            "radius",
            "mm",
            new Limits(990.0, 1020.0, 1000.0),
            List.of("middle"),
            new SubgroupRule(SubgroupRule.Kind.CONSECUTIVE, 5),
            ChartSettings.usual());
    JobStatistics statistics = new JobStatistics(plan);
    Random random = new Random(3);
    for (int i = 1; i <= 200; i++) {
      double off = skewed ? Math.sinh(1 + random.nextGaussian()) : random.nextGaussian();
      statistics.add(new Observation(i, i, "middle", i * 1_000_000L, 1000 + 2 * off, 0.1));
    }
    Summary summary = statistics.summary("middle", Scope.JOB);
    assertEquals(skewed, summary.figure("PpkPercentile").isPresent());
    return summary;
  }
}
