package org.chordlog.measure;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Times as people write them: the year first (2026-05-04), or day, month and year with points
 * (4.5.2026), alone or with a time of day, with or without its offset from UTC. What could be read
 * in two ways is refused.
 */
public final class TimeText {
  /** What may be written, for who is refused and for the help. */
  public static final String ALLOWED =
      "as 2026-05-04, 2026-05-04 14:30, 4.5.2026 14:30 or 2026-05-04T14:30:00Z";

  private static final String YEAR_FIRST =
      "(?<y>\\d{4})(?<m>[-/.])(?<mo>\\d{1,2})\\k<m>(?<d>\\d{1,2})";
  private static final String DAY_FIRST = "(?<dd>\\d{1,2})\\. ?(?<dmo>\\d{1,2})\\. ?(?<dy>\\d{4})";
  private static final String OF_DAY =
      "(?<h>\\d{1,2}):(?<min>\\d{2})(?::(?<s>\\d{2})(?:[.,](?<f>\\d{1,9})\\d*)?)?";
  private static final String OFFSET = "(?<off>[Zz]|UTC|[-+]\\d{2}(?::?\\d{2})?)";
  private static final Pattern TIME =
      Pattern.compile(
          "(?:"
              + YEAR_FIRST
              + "|"
              + DAY_FIRST
              + ")(?:(?: |[Tt])"
              + OF_DAY
              + "(?: ?"
              + OFFSET
              + ")?)?");

  private static final Pattern DOUBTFUL = Pattern.compile("\\d{1,2}([-/])\\d{1,2}\\1\\d{2,4}\\b.*");
  private static final Pattern SHORT_YEAR =
      Pattern.compile("\\d{1,2}\\. ?\\d{1,2}\\. ?\\d{2}\\b.*");
  private static final Pattern SERIAL = Pattern.compile("\\d{5}(?:[.,]\\d+)?");
  private static final int NANO_DIGITS = 9;

  private TimeText() {}

  /**
   * Microseconds since 1970 in UTC; a time without its offset is of that zone, and a day alone its
   * beginning there. {@link BadInput} of {@code field} for what is no time or could be two.
   */
  public static long micros(String field, String text, ZoneId zone) {
    return read(field, text, zone, 0);
  }

  /** The same of a last moment: a day alone goes on until its last microsecond. */
  public static long lastMicros(String field, String text, ZoneId zone) {
    return read(field, text, zone, 1);
  }

  /** Whether that is a time, or meant to be one that could be read in two ways. */
  public static boolean looksLike(String text) {
    String plain = plain(text);
    return TIME.matcher(plain).matches() || DOUBTFUL.matcher(plain).matches();
  }

  private static long read(String field, String text, ZoneId zone, int daysAlone) {
    Matcher found = TIME.matcher(plain(text));
    if (!found.matches()) {
      throw new BadInput(field, text, problem(plain(text)), ALLOWED);
    }
    try {
      LocalDate day = day(found);
      if (found.group("h") == null) {
        return micros(day.plusDays(daysAlone).atStartOfDay(zone).toInstant()) - daysAlone;
      }
      LocalDateTime local = day.atTime(ofDay(found));
      String offset = found.group("off");
      return micros(local.toInstant(offset == null ? only(field, text, local, zone) : of(offset)));
    } catch (DateTimeException | ArithmeticException e) {
      throw new BadInput(field, text, "is not in the calendar", ALLOWED);
    }
  }

  private static LocalDate day(Matcher found) {
    return found.group("y") == null
        ? LocalDate.of(number(found, "dy"), number(found, "dmo"), number(found, "dd"))
        : LocalDate.of(number(found, "y"), number(found, "mo"), number(found, "d"));
  }

  private static LocalTime ofDay(Matcher found) {
    String fraction = found.group("f");
    int nanos = fraction == null ? 0 : Integer.parseInt(padded(fraction));
    return LocalTime.of(number(found, "h"), number(found, "min"), number(found, "s"), nanos);
  }

  private static String padded(String fraction) {
    return fraction + "0".repeat(NANO_DIGITS - fraction.length());
  }

  /** 0 where it was not written. */
  private static int number(Matcher found, String group) {
    @Nullable String digits = found.group(group);
    return digits == null ? 0 : Integer.parseInt(digits);
  }

  private static ZoneOffset of(String offset) {
    return Character.isLetter(offset.charAt(0)) ? ZoneOffset.UTC : ZoneOffset.of(offset);
  }

  /**
   * When clocks are put forward an hour is left out, and when they are put back one comes twice.
   */
  private static ZoneOffset only(String field, String text, LocalDateTime local, ZoneId zone) {
    List<ZoneOffset> offsets = zone.getRules().getValidOffsets(local);
    if (offsets.size() != 1) {
      throw new BadInput(
          field,
          text,
          (offsets.isEmpty() ? "is left out" : "comes twice")
              + " in "
              + zone.getId()
              + ", where clocks are changed then",
          "with its offset, as 2026-05-04T14:30:00+02:00");
    }
    return offsets.get(0);
  }

  private static String problem(String text) {
    if (text.isEmpty()) {
      return "is missing";
    }
    if (DOUBTFUL.matcher(text).matches()) {
      return "could be day or month first: dates written so are not read";
    }
    if (text.matches(OF_DAY)) {
      return "is a time of day without its day";
    }
    if (SHORT_YEAR.matcher(text).matches()) {
      return "has a year of two digits";
    }
    return SERIAL.matcher(text).matches()
        ? "is a number, as spreadsheets keep times: format its cells as a date"
        : "is not a time";
  }

  /** With plain spaces, one at a time. */
  private static String plain(String text) {
    return text.replaceAll("[\\s\u00A0\u2009\u202F]+", " ").strip();
  }

  /**
   * Whole microseconds since 1970 in UTC, what is finer cut off; throws ArithmeticException beyond
   * the years that a long holds.
   */
  public static long micros(Instant instant) {
    return ChronoUnit.MICROS.between(Instant.EPOCH, instant);
  }

  /** Microseconds since 1970 as ISO 8601, in UTC. */
  public static String iso(long micros) {
    return Instant.EPOCH.plus(micros, ChronoUnit.MICROS).toString();
  }

  /** The day there, as 2026-05-04. */
  public static String day(long micros, ZoneId zone) {
    return Instant.EPOCH.plus(micros, ChronoUnit.MICROS).atZone(zone).toLocalDate().toString();
  }

  /** For people, to the minute, with the zone: 2026-05-04 14:30 Europe/Berlin. */
  public static String words(Instant at, ZoneId zone) {
    return String.format(
        Locale.ROOT,
        "%1$tF %1$tR %2$s",
        at.atZone(zone),
        zone.equals(ZoneOffset.UTC) ? "UTC" : zone.getId());
  }
}
