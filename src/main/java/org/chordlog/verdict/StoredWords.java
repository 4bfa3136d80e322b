package org.chordlog.verdict;

import java.time.Instant;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import org.chordlog.measure.Calibration;
import org.chordlog.measure.Master;
import org.chordlog.measure.Quantity;
import org.chordlog.measure.Sentence;
import org.chordlog.measure.TimeText;

/** What is stored of a row of a file, with its units, for who looks at it before. */
public final class StoredWords {
  private StoredWords() {}

  public static Sentence of(Master master) {
    Double limit = master.checkLimitMm();
    return Sentence.of(
        "%s, radius %s, expanded uncertainty (k = 2) %s, %s",
        Words.of(master.face()),
        Quantity.stated(master.radiusMm()),
        Quantity.stated(master.expandedUncertaintyMm()),
        limit == null
            ? "no limit for checks"
            : Sentence.of("checks may differ by %s", Quantity.stated(limit)));
  }

  /** Without the covariances. */
  public static Sentence of(Calibration calibration) {
    return Sentence.of(
        "taken %s by %s, due %s, span %s, standard uncertainty %s",
        time(calibration.takenAtMicros()),
        calibration.takenBy(),
        time(calibration.dueAtMicros()),
        Quantity.stated(calibration.spanMm()),
        Quantity.stated(Math.sqrt(calibration.covariance().get(0).get(0))));
  }

  private static String time(long micros) {
    return TimeText.words(Instant.EPOCH.plus(micros, ChronoUnit.MICROS), ZoneOffset.UTC);
  }
}
