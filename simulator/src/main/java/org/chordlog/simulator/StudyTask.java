package org.chordlog.simulator;

import java.util.List;
import org.chordlog.measure.BadInput;
import org.jspecify.annotations.Nullable;

/**
 * What a study asks one person to measure; {@code masterMm} is the radius of a convex master, null
 * for a piece.
 */
record StudyTask(String person, String part, String place, @Nullable Double masterMm) {
  private static final String BY_EYE = "by eye";
  private static final String ON_MARK = "on the mark";

  /** As {@code Ann, 3, start} or {@code Ann, ring, , 1800}. */
  static StudyTask parse(String text) {
    List<String> parts = List.of(text.split(",", -1)).stream().map(String::strip).toList();
    if (parts.size() < 2 || parts.size() > 4 || parts.get(0).isEmpty() || parts.get(1).isEmpty()) {
      throw refusal(text);
    }
    try {
      return new StudyTask(
          parts.get(0),
          parts.get(1),
          parts.size() > 2 ? parts.get(2) : "",
          parts.size() > 3 ? Double.valueOf(parts.get(3)) : null);
    } catch (NumberFormatException e) {
      throw refusal(text);
    }
  }

  private static BadInput refusal(String text) {
    String allowed = "as: measure Ann, 3, start or: measure Ann, ring, , 1800";
    return new BadInput("measure", "'" + text + "'", "does not say who measures what", allowed);
  }

  /** Found without its mark. */
  boolean byEye() {
    return place.equals(BY_EYE);
  }

  /** How it is placed is not where. */
  String spot() {
    return byEye() || place.equals(ON_MARK) ? "" : place;
  }
}
