package org.chordlog.measure;

import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.IntPredicate;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * Rows of a CSV file that sum up the others, as spreadsheets and instruments write them below the
 * data: they begin with a word for a mean, a sum or a spread, or with nothing where all others
 * begin with something.
 */
public final class CsvSummary {
  private static final Set<String> WORDS =
      Set.of(
          "average",
          "avg",
          "average value",
          "mean",
          "mean value",
          "arithmetic mean",
          "median",
          "total",
          "totals",
          "subtotal",
          "grand total",
          "sum",
          "std dev",
          "stddev",
          "stdev",
          "st dev",
          "std deviation",
          "standard deviation",
          "variance",
          "minimum",
          "maximum",
          "cpk",
          "ppk",
          "mittelwert",
          "durchschnitt",
          "summe",
          "gesamt",
          "standardabweichung",
          "moyenne",
          "somme",
          "écart type",
          "promedio",
          "desviación estándar",
          "gemiddelde",
          "medelvärde",
          "średnia");

  /** Names of people and pieces too: taken for a summary beside one, or below numbers. */
  private static final Set<String> DOUBTFUL =
      Set.of(
          "min",
          "max",
          "n",
          "count",
          "range",
          "s",
          "r",
          "sigma",
          "σ",
          "lsl",
          "usl",
          "x̄",
          "cp",
          "pp",
          "std",
          "anzahl",
          "spannweite",
          "media",
          "suma",
          "som",
          "summa");

  /** No summary has more rows; no source. */
  private static final int MOST_NAMELESS = 10;

  private final List<List<String>> rows;

  /** What each row begins with, plain. */
  private final List<String> words;

  private final Map<String, Long> timesThere;
  private final Set<Integer> found = new TreeSet<>();

  private CsvSummary(List<List<String>> rows) {
    this.rows = rows;
    words = IntStream.range(0, rows.size()).mapToObj(row -> plain(first(row))).toList();
    timesThere =
        words.stream()
            .filter(DOUBTFUL::contains)
            .collect(Collectors.groupingBy(each -> each, Collectors.counting()));
  }

  /** Indices of such rows among those below a heading; none where all would be. */
  public static Set<Integer> among(List<List<String>> rows) {
    CsvSummary summary = new CsvSummary(rows);
    summary.add(row -> WORDS.contains(summary.words.get(row)));
    int sure = summary.found.size();
    summary.addDoubtfulBelowNumbers();
    for (int before = -1; before < summary.found.size(); ) {
      before = summary.found.size();
      summary.add(row -> summary.isDoubtfulBeside(row, sure));
    }
    summary.nameless();
    return summary.found.size() == rows.size() ? Set.of() : summary.found;
  }

  /** Whether that is a word for a summary, and hardly a name. */
  public static boolean isWord(String cell) {
    return WORDS.contains(plain(cell));
  }

  private void add(IntPredicate is) {
    found.addAll(IntStream.range(0, rows.size()).filter(is).boxed().toList());
  }

  private void addDoubtfulBelowNumbers() {
    List<Integer> others =
        IntStream.range(0, rows.size())
            .filter(row -> !found.contains(row) && !isDoubtful(row))
            .boxed()
            .toList();
    Map<Integer, Boolean> numbers = new HashMap<>();
    add(
        row ->
            isDoubtful(row)
                && others.size() > 1
                && numbers.computeIfAbsent(firstColumn(row), at -> areNumbers(others, at)));
  }

  private boolean isDoubtful(int row) {
    return DOUBTFUL.contains(words.get(row));
  }

  private boolean areNumbers(List<Integer> of, int column) {
    return of.stream().allMatch(row -> NumberText.read(cell(row, column)) != null);
  }

  /** Somebody called Max has more rows than there are sums. */
  private boolean isDoubtfulBeside(int row, int sure) {
    return isDoubtful(row)
        && (found.contains(row - 1) || found.contains(row + 1))
        && timesThere.getOrDefault(words.get(row), 0L) <= sure;
  }

  /** The last rows, where they lack what all others have and hold nothing but figures. */
  private void nameless() {
    List<Integer> data =
        IntStream.range(0, rows.size()).filter(row -> !found.contains(row)).boxed().toList();
    int last = data.size();
    while (last > 0 && cell(data.get(last - 1), 0).isEmpty()) {
      last--;
    }
    List<Integer> named = data.subList(0, last);
    List<Integer> rest = data.subList(last, data.size());
    if (rest.size() <= MOST_NAMELESS
        && rest.size() < named.size()
        && named.stream().noneMatch(row -> cell(row, 0).isEmpty())
        && rest.stream().allMatch(row -> holdsFiguresAlone(row, named))) {
      found.addAll(rest);
    }
  }

  private boolean holdsFiguresAlone(int row, List<Integer> named) {
    return IntStream.range(0, rows.get(row).size())
        .filter(column -> !cell(row, column).isEmpty())
        .allMatch(
            column -> NumberText.read(cell(row, column)) != null && areNumbers(named, column));
  }

  private int firstColumn(int row) {
    return IntStream.range(0, rows.get(row).size())
        .filter(column -> !cell(row, column).isEmpty())
        .findFirst()
        .orElse(0);
  }

  private String first(int row) {
    return cell(row, firstColumn(row));
  }

  private String cell(int row, int column) {
    List<String> cells = rows.get(row);
    return column < cells.size() ? CsvText.trimmed(cells.get(column)) : "";
  }

  private static String plain(String cell) {
    return cell.toLowerCase(Locale.ROOT)
        .replaceAll("\\(.*\\)|[:=.]", "")
        .replaceAll("[\\s_-]+", " ")
        .strip();
  }
}
