package org.chordlog.study;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.chordlog.measure.BadInput;
import org.chordlog.study.StudyReading.Cell;

/** The readings of a study by cell; every cell that is asked for must have all its repeats. */
final class Cells {
  private final List<StudyReading> readings;
  private final Map<Cell, List<StudyReading>> cells = new LinkedHashMap<>();
  private final int repeats;

  /** {@link BadInput} without readings, without variation, or with a repeat given twice. */
  Cells(List<StudyReading> readings) {
    this.readings = List.copyOf(readings);
    if (readings.isEmpty()) {
      throw new BadInput("value", "nothing", "is there to evaluate", "rows with readings");
    }
    checkVariation();
    readings.forEach(this::add);
    cells.values().forEach(cell -> cell.sort(Comparator.comparingInt(StudyReading::repeat)));
    repeats = mostFrequentSize();
  }

  private void checkVariation() {
    double first = readings.get(0).value();
    if (readings.stream().allMatch(reading -> reading.value() == first)) {
      String allowed = "readings that vary; a step this coarse shows nothing of the gauge";
      throw new BadInput("value", first, "is the same in every row", allowed);
    }
  }

  private void add(StudyReading reading) {
    List<StudyReading> cell = cells.computeIfAbsent(reading.cell(), key -> new ArrayList<>());
    if (cell.stream().anyMatch(other -> other.repeat() == reading.repeat())) {
      String field = reading.cell().toString();
      throw new BadInput(field, "repeat " + reading.repeat(), "is there twice", "each repeat once");
    }
    cell.add(reading);
  }

  private int mostFrequentSize() {
    Map<Integer, Integer> counts = new HashMap<>();
    cells.values().forEach(cell -> counts.merge(cell.size(), 1, Integer::sum));
    return counts.entrySet().stream()
        .max(Map.Entry.<Integer, Integer>comparingByValue().thenComparing(Map.Entry::getKey))
        .orElseThrow()
        .getKey();
  }

  /** Readings of a complete cell. */
  int repeats() {
    return repeats;
  }

  List<StudyReading> readings() {
    return readings;
  }

  double mean() {
    return readings.stream().mapToDouble(StudyReading::value).average().orElse(Double.NaN);
  }

  /** Distinct names in the order in which they appear. */
  List<String> names(Function<StudyReading, String> of) {
    return readings.stream().map(of).distinct().toList();
  }

  /** Readings of a cell in the order of their repeats; {@link BadInput} where one is missing. */
  List<StudyReading> at(String part, String place, String operator) {
    Cell cell = new Cell(part, place, operator);
    List<StudyReading> found = cells.getOrDefault(cell, List.of());
    if (found.size() < repeats) {
      throw missing(cell, found);
    }
    if (found.size() > repeats) {
      String allowed = repeats + " repeats, as in most cells";
      throw new BadInput(cell.toString(), found.size() + " repeats", "are too many", allowed);
    }
    return found;
  }

  double[] values(String part, String place, String operator) {
    return at(part, place, operator).stream().mapToDouble(StudyReading::value).toArray();
  }

  private BadInput missing(Cell cell, List<StudyReading> found) {
    Set<Integer> there = new LinkedHashSet<>();
    found.forEach(reading -> there.add(reading.repeat()));
    String wanted =
        IntStream.rangeClosed(1, repeats)
            .filter(repeat -> !there.contains(repeat))
            .limit(repeats - found.size())
            .mapToObj(String::valueOf)
            .collect(Collectors.joining(", "));
    String allowed = "all " + repeats + " repeats in every cell: measure this cell again";
    boolean several = wanted.contains(",");
    return new BadInput(
        cell.toString(),
        (several ? "repeats " : "repeat ") + wanted,
        several ? "are missing" : "is missing",
        allowed);
  }

  /** {@link BadInput} below {@code least} names. */
  static void atLeast(String field, List<String> names, int least, String instead) {
    if (names.size() < least) {
      String allowed = least + " or more" + instead;
      throw new BadInput(
          field, names.isEmpty() ? "none" : names.get(0), "is the only one", allowed);
    }
  }
}
