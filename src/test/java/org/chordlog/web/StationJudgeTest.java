package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Map;
import org.chordlog.measure.Incident;
import org.chordlog.measure.Indicator;
import org.chordlog.measure.Sentence;
import org.chordlog.station.StationStatus;
import org.chordlog.stats.drift.MachineStatistics;
import org.chordlog.verdict.MachineStatement;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What stands in large over a station whose values can't be relied on. */
final class StationJudgeTest {
  private static StationStatus doubtful(Incident.Kind kind, boolean zeroMoved) {
    return new StationStatus(
        "A",
        "M",
        StationStatus.LinkState.OPEN,
        "Open.",
        "/dev/x",
        0,
        null,
        new StationStatus.Counts(0, 0, 0, 0, 0, 0, 0, Map.of()),
        null,
        new StationStatus.PlaceNow(0, "", 1, false, null, null),
        1L,
        1L,
        false,
        zeroMoved,
        new StationStatus.InDoubt(kind, Sentence.plain("Look at it.")),
        null,
        null);
  }

  /** A frozen value is no changed setting, nor a moved zero where that moved before. */
  @ParameterizedTest
  @CsvSource({
    "FROZEN, false, Value frozen",
    "FROZEN, true, Value frozen",
    "ZERO_MOVED, true, Zero moved",
    "SETTING_CHANGED, false, Indicator setting changed",
  })
  void theHeadingIsThatOfWhatIsFound(Incident.Kind kind, boolean zeroMoved, String word) {
    GaugeView gauge =
        new GaugeView(
            "A",
            new Indicator(0.01, 0.02, 12.5),
            null,
            null,
            null,
            false,
            null,
            null,
            null,
            List.of());
    MachineStatement machine =
        new MachineStatement(new MachineStatistics().verdict(0.01), null, null);
    var verdict =
        new StationJudge(doubtful(kind, zeroMoved), gauge).verdict(null, null, true, machine);
    assertEquals(word, verdict.findings().get(0).statement().word());
  }
}
