package org.chordlog.simulator;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Consumer;
import org.chordlog.simulator.VirtualOperator.Handling;
import org.jspecify.annotations.Nullable;

/** Where the plunger is at any second of the scenario; asked in the order of time. */
final class VirtualPlunger {
  private static final double IDLE_SECONDS = 0.2;

  private final VirtualMachine machine;
  private final VirtualOperator operator;
  private final Consumer<Contact> truth;
  private final Deque<Workpiece> waiting = new ArrayDeque<>();
  private final Deque<Move> moves = new ArrayDeque<>();
  private final Queue<StudyTask> tasks = new ConcurrentLinkedQueue<>();
  private volatile @Nullable StudyCrew crew;
  private volatile boolean flat;
  private final AtomicInteger studied = new AtomicInteger();
  private boolean studyContact;
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

  /** From the next piece on a study is measured, or null: pieces of the job again; any thread. */
  void study(@Nullable StudyCrew of) {
    tasks.clear();
    flat = false;
    crew = of;
  }

  /** In a study the bridge stands on the flat until something is measured; any thread. */
  void flat() {
    flat = true;
  }

  /** What is measured next in the study; any thread. */
  void add(StudyTask task) {
    flat = false;
    tasks.add(task);
  }

  /** How many tasks were done, with the bridge in free air again; any thread. */
  int studied() {
    return studied.get();
  }

  private void next() {
    if (!moves.isEmpty()) {
      moveStart += moves.removeFirst().seconds();
      return;
    }
    if (studyContact) {
      studyContact = false;
      studied.incrementAndGet();
    }
    @Nullable StudyCrew studying = crew;
    if (studying != null) {
      @Nullable StudyTask task = tasks.poll();
      if (task == null) {
        idle();
      } else {
        begin(operator.measure(task, studying, end));
        studyContact = true;
      }
      return;
    }
    if (waiting.isEmpty()) {
      waiting.addAll(machine.bend());
    }
    begin(operator.measure(waiting.removeFirst(), end));
  }

  /** In free air or on the flat until there is something to do. */
  private void idle() {
    moveStart = end;
    moves.add(Move.hold(flat ? operator.flatMm() : 0, IDLE_SECONDS));
    end += IDLE_SECONDS;
  }

  private void begin(Handling handling) {
    moveStart = end;
    moves.addAll(handling.moves());
    end = handling.contact().leftSeconds();
    truth.accept(handling.contact());
  }
}
