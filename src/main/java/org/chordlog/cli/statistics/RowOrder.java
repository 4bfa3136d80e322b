package org.chordlog.cli.statistics;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.chordlog.cli.common.CsvColumns;
import org.chordlog.measure.BadInput;
import org.jspecify.annotations.Nullable;

/**
 * In which order the rows of a file are taken: charts and run tests judge readings in the order in
 * which they were made. That is by the ids of exported readings, as the statistics of their job
 * take them; else by their times, else piece by piece where the file has one position after
 * another, else as the file has them.
 *
 * @param rows rows of the file, in that order
 * @param said what of it a reader has to know
 */
record RowOrder(List<Integer> rows, List<String> said) {
  private static final String FILE_ORDER = " (--file-order takes that).";

  RowOrder {
    rows = List.copyOf(rows);
    said = List.copyOf(said);
  }

  static RowOrder of(CsvColumns columns, AnalyseColumns.Found at) {
    return new Finder(columns, at).order();
  }

  /** As the file has them. */
  static RowOrder asFiled(CsvColumns columns) {
    return new RowOrder(all(columns).toList(), List.of());
  }

  private static Stream<Integer> all(CsvColumns columns) {
    return IntStream.range(0, columns.rows()).boxed();
  }

  private static List<Integer> sorted(Stream<Integer> rows, long[] by) {
    return rows.sorted(Comparator.comparingLong(row -> by[row])).toList();
  }

  private static boolean rises(long[] numbers) {
    return IntStream.range(1, numbers.length).allMatch(row -> numbers[row] >= numbers[row - 1]);
  }

  /** Else something besides has to decide, as where there are days alone. */
  private static boolean areAllDifferent(long[] numbers) {
    return LongStream.of(numbers).distinct().count() == numbers.length;
  }

  /** Looks for it. */
  private static final class Finder {
    private static final Pattern WHOLE = Pattern.compile("\\d{1,18}");

    private final CsvColumns columns;
    private final int id;
    private final int piece;
    private final int position;
    private final boolean timeWanted;
    private final @Nullable RowTimes times;
    private final List<String> said = new ArrayList<>();

    Finder(CsvColumns columns, AnalyseColumns.Found at) {
      this.columns = columns;
      id = AnalyseColumns.isExported(columns) ? columns.only("id") : -1;
      piece = at.piece() >= 0 ? at.piece() : columns.only("piece");
      position = at.position() >= 0 ? at.position() : columns.only("position");
      timeWanted = at.time() >= 0;
      times = RowTimes.of(columns, at.time());
    }

    RowOrder order() {
      List<Integer> rows = timeWanted ? null : byId();
      if (rows == null && times != null) {
        rows = byTime(times);
      }
      return new RowOrder(rows == null ? byPiece() : rows, said);
    }

    /** Null where there are none, or files of several computers were put together. */
    private @Nullable List<Integer> byId() {
      long[] ids = id < 0 ? null : numbers(id);
      if (ids == null || !areAllDifferent(ids)) {
        return null;
      }
      if (!rises(ids)) {
        said.add(
            "Rows were taken by the numbers in column id, in which they were stored;"
                + " the file has them in another order"
                + FILE_ORDER);
      }
      return sorted(all(columns), ids);
    }

    /** Null where not every row has a whole number. */
    private long @Nullable [] numbers(int column) {
      boolean whole =
          all(columns).allMatch(row -> WHOLE.matcher(columns.cell(row, column)).matches());
      return whole
          ? all(columns).mapToLong(row -> Long.parseLong(columns.cell(row, column))).toArray()
          : null;
    }

    private @Nullable List<Integer> byTime(RowTimes of) {
      try {
        long[] micros = of.micros();
        boolean moves = !rises(micros);
        if (moves) {
          said.add(
              "Rows were taken by their times in column "
                  + of.column()
                  + "; the file has them in another order"
                  + FILE_ORDER);
        }
        return sorted(
            areAllDifferent(micros) ? all(columns) : withinOneTime(moves).stream(), micros);
      } catch (BadInput unreadable) {
        if (timeWanted) {
          throw unreadable;
        }
        said.add("Times were not used for the order of rows: " + unreadable.getMessage() + ".");
        return null;
      }
    }

    /** In a file that was sorted by something else its own order says nothing. */
    private List<Integer> withinOneTime(boolean moves) {
      long[] pieces = moves && piece >= 0 ? numbers(piece) : null;
      if (pieces == null && !moves) {
        return byPiece();
      }
      said.add(
          "Rows of the same time were taken "
              + (pieces == null
                  ? "as the file has them."
                  : "piece by piece (column " + columns.name(piece) + ")."));
      return pieces == null ? all(columns).toList() : sorted(all(columns), pieces);
    }

    private List<Integer> byPiece() {
      List<String> blocks = blocks();
      if (blocks.size() < 2) {
        return all(columns).toList();
      }
      String how = blocks.get(0) + ", then all of " + blocks.get(1);
      if (piece < 0 || !piecesComeAgain()) {
        said.add(
            "Rows were taken as the file has them: all of "
                + how
                + ". A difference between positions looks like a jump in time then; add a column"
                + " piece or time, or look at one position alone.");
        return all(columns).toList();
      }
      said.add(
          "Rows were taken piece by piece (column "
              + columns.name(piece)
              + "); the file has all of "
              + how
              + FILE_ORDER);
      Map<String, Integer> first = new HashMap<>();
      all(columns).forEach(row -> first.putIfAbsent(columns.cell(row, piece), row));
      return all(columns)
          .sorted(Comparator.comparingInt(row -> first.get(columns.cell(row, piece))))
          .toList();
    }

    /** Positions in the order of the file, where each has its rows together; else none. */
    private List<String> blocks() {
      if (position < 0) {
        return List.of();
      }
      List<String> blocks = new ArrayList<>();
      for (int row = 0; row < columns.rows(); row++) {
        String at = columns.cell(row, position);
        if (blocks.isEmpty() || !at.equals(blocks.get(blocks.size() - 1))) {
          blocks.add(at);
        }
      }
      boolean together = new HashSet<>(blocks).size() == blocks.size();
      return together && blocks.size() < columns.rows() ? blocks : List.of();
    }

    /** Whether some piece is at more than one position, though each position is by itself. */
    private boolean piecesComeAgain() {
      Map<String, Set<String>> at = new HashMap<>();
      all(columns)
          .forEach(
              row ->
                  at.computeIfAbsent(columns.cell(row, piece), each -> new HashSet<>())
                      .add(columns.cell(row, position)));
      return at.values().stream().anyMatch(each -> each.size() > 1) && at.size() > 1;
    }
  }
}
