package org.chordlog.report.qif;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.chordlog.measure.BadInput;

/** The positions of a job with their numbers from 0: those planned, then any others measured. */
final class QifPositions {
  private final Map<String, Integer> numbers = new LinkedHashMap<>();

  QifPositions(List<String> planned) {
    planned.forEach(this::number);
  }

  int number(String position) {
    if (numbers.size() > QifCount.MOST_POSITIONS) {
      String allowed = QifCount.MOST_POSITIONS + " at most";
      throw new BadInput("positions", numbers.size(), "are too many for a document", allowed);
    }
    return numbers.computeIfAbsent(position, key -> numbers.size());
  }

  List<String> names() {
    return new ArrayList<>(numbers.keySet());
  }
}
