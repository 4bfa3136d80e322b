package org.chordlog.study;

import org.chordlog.measure.Check;

/**
 * One reading of a study. {@code place} and {@code operator} are empty where the study has none;
 * {@code repeat} counts within a cell from 1; {@code order} is when it was measured within the
 * whole study, 0 where that is unknown; {@code value} is in the study's unit.
 */
public record StudyReading(
    String part, String place, String operator, int repeat, long order, double value) {
  public StudyReading {
    Check.text("part", part);
    Check.within("repeat", repeat, 1, Integer.MAX_VALUE);
    Check.within("order", order, 0, Long.MAX_VALUE);
    Check.finite("value", value);
  }

  /** The same where the place does not tell readings of the part apart. */
  public StudyReading withoutPlace() {
    return new StudyReading(part, "", operator, repeat, order, value);
  }

  Cell cell() {
    return new Cell(part, place, operator);
  }

  /** Where repeats belong together. */
  record Cell(String part, String place, String operator) {
    @Override
    public String toString() {
      return "piece "
          + part
          + (place.isEmpty() ? "" : ", place " + place)
          + (operator.isEmpty() ? "" : ", operator " + operator);
    }
  }
}
