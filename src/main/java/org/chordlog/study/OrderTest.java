package org.chordlog.study;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.ToLongFunction;
import org.apache.commons.statistics.distribution.TDistribution;
import org.chordlog.study.StudyReading.Cell;

/**
 * Whether what is measured changes while it is measured: the slope of the readings of one place
 * over the order of measuring, and Student's t of the mean slope over all places. Each operator's
 * mean is taken off first. Where no order is known, repeats within a cell stand for it.
 */
final class OrderTest {
  static final String NAME = "order of ";
  static final String FOUND =
      "Readings of a place change with the order of measuring: the piece moves while it is measured"
          + " (springs, relaxes, warms). Use the nested design, each operator with pieces of their"
          + " own, or measure after the piece has come to rest.";

  private OrderTest() {}

  /** Empty where no place was measured twice or fewer than two were. */
  static Optional<StudyTest> of(List<StudyReading> readings) {
    boolean ordered = readings.stream().allMatch(reading -> reading.order() > 0);
    Map<String, Double> operators = operatorMeans(readings);
    Map<Cell, List<StudyReading>> places = new LinkedHashMap<>();
    for (StudyReading reading : readings) {
      Cell cell = reading.cell();
      Cell place = ordered ? new Cell(cell.part(), cell.place(), "") : cell;
      places.computeIfAbsent(place, key -> new ArrayList<>()).add(reading);
    }
    ToLongFunction<StudyReading> order =
        ordered ? StudyReading::order : reading -> reading.repeat();
    return test(slopes(places.values(), operators, order), ordered);
  }

  private static Map<String, Double> operatorMeans(List<StudyReading> readings) {
    Map<String, List<Double>> values = new LinkedHashMap<>();
    readings.forEach(
        reading ->
            values
                .computeIfAbsent(reading.operator(), key -> new ArrayList<>())
                .add(reading.value()));
    Map<String, Double> means = new LinkedHashMap<>();
    values.forEach(
        (name, of) -> means.put(name, Means.mean(of.stream().mapToDouble(v -> v).toArray())));
    return means;
  }

  private static double[] slopes(
      Collection<List<StudyReading>> places,
      Map<String, Double> operators,
      ToLongFunction<StudyReading> order) {
    return places.stream()
        .filter(place -> place.size() > 1)
        .mapToDouble(place -> slope(place, operators, order))
        .toArray();
  }

  /** Per reading of the place, so that pauses between them do not count. */
  private static double slope(
      List<StudyReading> place, Map<String, Double> operators, ToLongFunction<StudyReading> order) {
    List<StudyReading> sorted = place.stream().sorted(Comparator.comparingLong(order)).toList();
    double middle = (sorted.size() - 1) / 2.0;
    double sum = 0;
    double squares = 0;
    for (int i = 0; i < sorted.size(); i++) {
      double mean = operators.getOrDefault(sorted.get(i).operator(), 0.0);
      sum += (i - middle) * (sorted.get(i).value() - mean);
      squares += (i - middle) * (i - middle);
    }
    return sum / squares;
  }

  private static Optional<StudyTest> test(double[] slopes, boolean ordered) {
    if (slopes.length < 2 || Means.deviation(slopes) == 0) {
      return Optional.empty();
    }
    double t = Means.mean(slopes) / (Means.deviation(slopes) / Math.sqrt(slopes.length));
    double degrees = slopes.length - 1.0;
    double p = 2 * TDistribution.of(degrees).survivalProbability(Math.abs(t));
    String name = NAME + (ordered ? "measuring" : "repeats");
    String says = p < StudyTest.LEVEL ? FOUND : "No change with the " + name + " is seen.";
    return Optional.of(new StudyTest(name, t, degrees, null, p, says));
  }
}
