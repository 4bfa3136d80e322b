package org.chordlog.simulator;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Deque;
import java.util.List;

/** The faults of a scenario in the order of their time. */
final class FaultPlan {
  private final Deque<Scenario.PlannedFault> ahead;

  FaultPlan(List<Scenario.PlannedFault> faults) {
    ahead =
        new ArrayDeque<>(
            faults.stream()
                .sorted(Comparator.comparingDouble(Scenario.PlannedFault::atSeconds))
                .toList());
  }

  /** Those whose time has come, each once. */
  List<FaultCommand> due(double seconds) {
    List<FaultCommand> due = new ArrayList<>();
    while (!ahead.isEmpty() && ahead.getFirst().atSeconds() <= seconds) {
      due.add(FaultCommand.parse(ahead.removeFirst().fault()));
    }
    return due;
  }
}
