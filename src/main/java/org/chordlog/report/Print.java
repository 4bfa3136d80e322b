package org.chordlog.report;

import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.Locale;
import org.chordlog.measure.Decimals;
import org.chordlog.measure.Decision;
import org.chordlog.stats.capability.Figure;
import org.chordlog.verdict.Words;
import org.jspecify.annotations.Nullable;

/** Values as printed. */
final class Print {
  static final String NONE = "–";
  private static final DateTimeFormatter TIME =
      DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm:ss", Locale.ROOT);

  private Print() {}

  static String time(long micros, ZoneId zone) {
    return TIME.withZone(zone).format(Instant.EPOCH.plus(micros, ChronoUnit.MICROS));
  }

  static String time(Instant at, ZoneId zone) {
    return TIME.withZone(zone).format(at);
  }

  static String number(@Nullable Double value, int decimals) {
    return value == null ? NONE : Decimals.fixed(value, decimals);
  }

  /** Four significant digits or more, two of a small value; never in powers of ten. */
  static String figure(@Nullable Double value) {
    if (value == null) {
      return NONE;
    }
    double size = Math.abs(value);
    if (size == Math.rint(size) && size < 1e9) {
      return number(value, 0);
    }
    int decimals =
        size >= 1000
            ? 2
            : size >= 10 ? 3 : size >= 0.01 ? 4 : 1 - (int) Math.floor(Math.log10(size));
    return number(value, decimals);
  }

  /** With the decimals that its kind of figure supports. */
  static String figure(Figure figure, @Nullable Double value) {
    return value == null ? NONE : figure.printed(value);
  }

  /** A value that someone has set: as short as it is, to a millionth. */
  static String plain(double value) {
    return Decimals.setting(value);
  }

  static String counted(long count, String thing) {
    return count + " " + thing + (count == 1 ? "" : "s");
  }

  static String of(Decision decision) {
    return Words.sign(decision) + " " + Words.of(decision);
  }
}
