package org.chordlog.web;

import java.util.function.BiFunction;
import org.chordlog.measure.Specification;
import org.chordlog.monitor.MachineTarget;
import org.chordlog.monitor.Monitor;
import org.chordlog.stats.drift.DriftFinding;
import org.chordlog.stats.drift.MachineVerdict;
import org.chordlog.store.Store;
import org.chordlog.verdict.GaugeBesideMachine;
import org.chordlog.verdict.MachineStatement;
import org.jspecify.annotations.Nullable;

/** The one judgement of a machine, for its own page, its stations and its jobs. */
record MachineJudge(Store store, Monitor monitor) {
  MachineStatement of(String machine) {
    return of(machine, (statement, behind) -> statement);
  }

  /** With the number of readings that it does not hold yet. */
  <T> T of(String machine, BiFunction<MachineStatement, Long, T> view) {
    Specification asked = asked(machine);
    Double tolerance = toleranceMm(asked);
    Double target = asked == null ? null : (Double) asked.targetMm();
    Double relative = relative(asked);
    return monitor.readMachine(
        machine,
        (statistics, behind) ->
            view.apply(said(machine, statistics.verdict(relative), target, tolerance), behind));
  }

  private MachineStatement said(
      String machine, MachineVerdict verdict, @Nullable Double target, @Nullable Double tolerance) {
    DriftFinding move = verdict.finding();
    ReadingsOfMove readings = new ReadingsOfMove(store, machine);
    return move == null
        ? new MachineStatement(verdict, target, tolerance)
        : new MachineStatement(
            verdict, target, tolerance, gauge(readings, move), readings.place(move));
  }

  /** A recorded lot moves the level on purpose, whatever measures it. */
  private static GaugeBesideMachine gauge(ReadingsOfMove readings, DriftFinding move) {
    return move.kind() == DriftFinding.Kind.LOT ? GaugeBesideMachine.TRUSTED : readings.gauge(move);
  }

  /** Half the tolerance in parts of the target; null: none. */
  @Nullable Double tolerance(String machine) {
    return relative(asked(machine));
  }

  private @Nullable Specification asked(String machine) {
    return MachineTarget.of(store, machine).orElse(null);
  }

  private static @Nullable Double toleranceMm(@Nullable Specification asked) {
    return asked == null ? null : (Double) MachineTarget.toleranceMm(asked);
  }

  private static @Nullable Double relative(@Nullable Specification asked) {
    Double tolerance = toleranceMm(asked);
    return asked == null || tolerance == null ? null : (Double) (tolerance / asked.targetMm());
  }
}
