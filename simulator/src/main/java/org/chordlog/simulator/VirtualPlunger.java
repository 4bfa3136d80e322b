package org.chordlog.simulator;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.function.Consumer;
import org.chordlog.simulator.VirtualOperator.Handling;

/** Where the plunger is at any second of the scenario; asked in the order of time. */
final class VirtualPlunger {
  private final VirtualMachine machine;
  private final VirtualOperator operator;
  private final Consumer<Contact> truth;
  private final Deque<Workpiece> waiting = new ArrayDeque<>();
  private final Deque<Move> moves = new ArrayDeque<>();
  private double moveStart;
  private double end;

  VirtualPlunger(
      VirtualMachine machine,
      VirtualOperator operator,
      boolean flatFirst,
      Consumer<Contact> truth) {
    this.machine = machine;
    this.operator = operator;
    this.truth = truth;
    if (flatFirst) {
      begin(operator.onFlat());
    }
  }

  /** How far it is pushed in from free air, mm. */
  double pushedInMm(double seconds) {
    while (moves.isEmpty() || seconds >= moveStart + moves.getFirst().seconds()) {
      next();
    }
    return moves.getFirst().pushedInMm().applyAsDouble(seconds - moveStart);
  }

  private void next() {
    if (!moves.isEmpty()) {
      moveStart += moves.removeFirst().seconds();
      return;
    }
    if (waiting.isEmpty()) {
      waiting.addAll(machine.bend());
    }
    begin(operator.measure(waiting.removeFirst(), end));
  }

  private void begin(Handling handling) {
    moveStart = end;
    moves.addAll(handling.moves());
    end = handling.contact().leftSeconds();
    truth.accept(handling.contact());
  }
}
