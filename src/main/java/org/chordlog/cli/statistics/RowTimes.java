package org.chordlog.cli.statistics;

import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import org.chordlog.cli.common.CsvColumns;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.TimeText;
import org.jspecify.annotations.Nullable;

/** When each row of a file was measured, by the column that says so; a day may have its own. */
final class RowTimes {
  private static final List<String> USUAL =
      List.of(
          "time_utc",
          "time",
          "timestamp",
          "datetime",
          "date_time",
          "date time",
          "date",
          "taken_utc");

  /** Not 14:30:00, as spreadsheets show 14:30 too. */
  private static final Pattern WITH_SECONDS = Pattern.compile("\\d:\\d{2}:(?!00(?![.,]))\\d{2}");

  private static final Pattern OF_DAY = Pattern.compile("\\d:\\d{2}");

  private final CsvColumns columns;
  private final int time;
  private final int day;

  private RowTimes(CsvColumns columns, int time, int day) {
    this.columns = columns;
    this.time = time;
    this.day = day;
  }

  /** Of the column given, −1 for one with a usual name; null where there is none. */
  static @Nullable RowTimes of(CsvColumns columns, int given) {
    int time = given >= 0 ? given : usual(columns);
    if (time < 0) {
      return null;
    }
    int date = columns.only("date");
    return new RowTimes(columns, time, date == time ? -1 : date);
  }

  private static int usual(CsvColumns columns) {
    return USUAL.stream().mapToInt(columns::only).filter(at -> at >= 0).findFirst().orElse(-1);
  }

  String column() {
    return columns.name(time);
  }

  /** Whether they tell more than the day, of which many readings are. */
  boolean withinDays() {
    return anyHas(OF_DAY);
  }

  /** The column where they tell seconds, which no two readings have in common; else −1. */
  int key() {
    return anyHas(WITH_SECONDS) ? time : -1;
  }

  private boolean anyHas(Pattern part) {
    return IntStream.range(0, columns.rows())
        .anyMatch(row -> part.matcher(columns.cell(row, time)).find());
  }

  /** Of each row; {@link BadInput} of the first that can't be read. */
  long[] micros() {
    boolean utc = column().toLowerCase(Locale.ROOT).endsWith("_utc");
    ZoneId zone = utc ? ZoneOffset.UTC : ZoneId.systemDefault();
    long[] micros = new long[columns.rows()];
    for (int row = 0; row < micros.length; row++) {
      micros[row] = TimeText.micros(columns.place(row, time), text(row), zone);
    }
    return micros;
  }

  private String text(int row) {
    String cell = columns.cell(row, time);
    return day < 0 || TimeText.looksLike(cell) ? cell : columns.cell(row, day) + " " + cell;
  }
}
