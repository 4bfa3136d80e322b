package org.chordlog.measure;

import java.util.List;

/** Where a piece is measured, in order, and how its readings are grouped. */
public record Plan(List<String> positions, SubgroupRule subgroups) {
  public Plan {
    positions = List.copyOf(positions);
    if (positions.isEmpty() || positions.stream().distinct().count() != positions.size()) {
      throw new BadInput("positions", positions, "are empty or repeat", "one or more, each once");
    }
    positions.forEach(position -> Check.text("positions", position));
  }
}
