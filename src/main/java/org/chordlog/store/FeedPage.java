package org.chordlog.store;

import java.util.List;

/**
 * What comes after a place in the feed, all of one moment.
 *
 * @param to the place after this page
 * @param rows by table; facts in the order of {@link FeedTable}, then readings with their profiles
 * @param mark of the newest change up to {@code to}, 0 where there is none; see {@link Feed#mark}
 * @param tip the newest entry of the chain of hashes, which covers everything in this page
 * @param rest what is left after this page
 */
public record FeedPage(FeedPlace to, List<FeedRows> rows, long mark, SealTip tip, Rest rest) {
  /**
   * Changed facts and readings that come later, with the wall times of the first and last of these
   * readings in UTC µs (0: none).
   */
  public record Rest(long facts, long readings, long firstMicros, long lastMicros) {
    public static final Rest NONE = new Rest(0, 0, 0, 0);

    public long rows() {
      return facts + readings;
    }
  }

  public FeedPage {
    rows = List.copyOf(rows);
  }

  /** Rows in this page. */
  public int count() {
    return rows.stream().mapToInt(each -> each.rows().size()).sum();
  }

  /** Newest wall time of a reading in this page, UTC µs, 0 without readings. */
  public long newestMicros() {
    return rows.stream()
        .filter(each -> each.table() == FeedTable.READING)
        .mapToLong(FeedPage::newestMicros)
        .max()
        .orElse(0);
  }

  private static long newestMicros(FeedRows readings) {
    int column = readings.columns().indexOf("wall_micros");
    return readings.rows().stream()
        .mapToLong(row -> row.values().get(column) instanceof Number n ? n.longValue() : 0)
        .max()
        .orElse(0);
  }
}
