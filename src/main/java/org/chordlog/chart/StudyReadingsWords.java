package org.chordlog.chart;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.chordlog.chart.StudySnapshot.Cell;
import org.jspecify.annotations.Nullable;

/** The picture of a study's readings in words, for who can't see it. */
record StudyReadingsWords(
    List<Cell> cells,
    String unit,
    String spot,
    @Nullable CellSpread spread,
    @Nullable Double master,
    @Nullable MeanLimits limits) {
  /** With radii of so many decimals. */
  String description(int decimals) {
    String means =
        cells.stream()
            .map(Cell::operator)
            .distinct()
            .map(
                operator ->
                    "%s mean %s %s"
                        .formatted(operator, ChartWords.number(mean(operator), decimals), unit))
            .collect(Collectors.joining("; "));
    String what = spot.toLowerCase(Locale.ROOT);
    long readings = cells.stream().mapToLong(each -> each.values().size()).sum();
    String more = limits == null ? "" : described(limits, decimals);
    return "Readings by operator and %s, %s in all. %s.%s%s"
        .formatted(what, readings, means, more, spread == null ? "" : described(spread));
  }

  private String described(MeanLimits of, int decimals) {
    return " Limits of the means %s to %s %s; %s beyond. Master %s %s."
        .formatted(
            ChartWords.number(of.lower(), decimals),
            ChartWords.number(of.upper(), decimals),
            unit,
            cells.stream().filter(of::beyond).count(),
            ChartWords.number(master == null ? Double.NaN : master, decimals),
            unit);
  }

  private double mean(String operator) {
    return cells.stream()
        .filter(each -> each.operator().equals(operator))
        .mapToDouble(Cell::mean)
        .average()
        .orElseThrow();
  }

  private String described(CellSpread of) {
    long above = IntStream.range(0, cells.size()).filter(of::above).count();
    int decimals = ValueScale.of(List.of(of.lower(), of.upper())).decimals();
    return " Mean %s %s %s, limits %s to %s; %s above."
        .formatted(
            of.word(),
            ChartWords.number(of.centre(), decimals),
            unit,
            ChartWords.number(of.lower(), decimals),
            ChartWords.number(of.upper(), decimals),
            above);
  }
}
