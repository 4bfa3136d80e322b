package org.chordlog.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import org.chordlog.measure.BadInput;
import org.junit.jupiter.api.Test;

/** What is wrong with a table of readings, in one sentence each. */
final class StudyDataProblemsTest {
  private static String refused(Consumer<List<StudyReading>> change) {
    List<StudyReading> readings =
        new ArrayList<>(StudyData.readings("parts-appraisers-trials.csv"));
    change.accept(readings);
    return String.valueOf(
        assertThrows(BadInput.class, () -> CrossedStudy.of(readings, StudySettings.usual()))
            .getMessage());
  }

  private static boolean at(StudyReading reading, String part, String operator) {
    return reading.part().equals(part) && reading.operator().equals(operator);
  }

  @Test
  void aMissingRepeatIsNamedAndOffered() {
    assertEquals(
        "piece 3, operator B: repeat 2 is missing; allowed: all 3 repeats in every cell: measure"
            + " this cell again",
        refused(all -> all.removeIf(r -> at(r, "3", "B") && r.repeat() == 2)));
  }

  @Test
  void aMissingCell() {
    assertEquals(
        "piece 10, operator C: repeats 1, 2, 3 are missing; allowed: all 3 repeats in every cell:"
            + " measure this cell again",
        refused(all -> all.removeIf(r -> at(r, "10", "C"))));
  }

  @Test
  void aRepeatTooManyOrTwice() {
    assertEquals(
        "piece 1, operator A: 4 repeats are too many; allowed: 3 repeats, as in most cells",
        refused(all -> all.add(new StudyReading("1", "", "A", 4, 0, 0.5))));
    assertEquals(
        "piece 1, operator A: repeat 3 is there twice; allowed: each repeat once",
        refused(all -> all.add(new StudyReading("1", "", "A", 3, 0, 0.5))));
  }

  @Test
  void oneOperatorOnePartNothing() {
    assertEquals(
        "operator: A is the only one; allowed: 2 or more operators, or the study of one operator",
        refused(all -> all.removeIf(r -> !r.operator().equals("A"))));
    assertEquals(
        "part: 1 is the only one; allowed: 2 or more pieces",
        refused(all -> all.removeIf(r -> !r.part().equals("1"))));
    assertEquals(
        "value: nothing is there to evaluate; allowed: rows with readings", refused(List::clear));
  }

  @Test
  void aConstantColumn() {
    assertEquals(
        "value: 5.0 is the same in every row; allowed: readings that vary; a step this coarse shows"
            + " nothing of the gauge",
        refused(
            all ->
                all.replaceAll(
                    r -> new StudyReading(r.part(), "", r.operator(), r.repeat(), 0, 5))));
  }

  @Test
  void nestedTablesWantTheSameCounts() {
    List<StudyReading> readings =
        new ArrayList<>(StudyData.readings("parts-appraisers-trials.csv"));
    readings.removeIf(r -> at(r, "4", "C"));
    assertEquals(
        "operator C: 9 of 10 pieces are there; allowed: as many pieces with every operator as with"
            + " the first: measure the missing ones",
        assertThrows(BadInput.class, () -> NestedStudy.of(readings, false, StudySettings.usual()))
            .getMessage());
  }

  @Test
  void splitTablesWantTheSameCountsOfPlaces() {
    List<StudyReading> readings = new ArrayList<>();
    for (String piece : List.of("1", "2")) {
      for (String place : List.of("start", "end")) {
        for (String operator : List.of("A", "B")) {
          double value = piece.hashCode() + place.length() + operator.hashCode();
          readings.add(new StudyReading(piece, place, operator, 1, 0, value));
        }
      }
    }
    readings.removeIf(r -> r.part().equals("2") && r.place().equals("end"));
    assertEquals(
        "piece 2: 1 of 2 places are there; allowed: as many places on every piece as on the first:"
            + " measure the missing ones",
        assertThrows(
                BadInput.class,
                () -> SplitStudy.of(readings, SplitStudy.Places.AS_NAMED, StudySettings.usual()))
            .getMessage());
  }
}
