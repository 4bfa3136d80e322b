package org.chordlog.stats.control;

import java.util.List;
import org.chordlog.stats.control.Plotter.Place;
import org.chordlog.stats.math.Packer;
import org.chordlog.stats.math.Unpacker;
import org.jspecify.annotations.Nullable;

/** One chart: its plotter, run tests and the points it has settled. */
final class Series {
  private final ChartKind kind;
  private final Plotter plotter;
  private final RunHistory history;
  private final Thinner settled;
  private @Nullable JudgedLimits basis;
  private long settledCount;
  private long signalling;

  Series(ChartKind kind, StatisticsPlan plan) {
    this(
        kind,
        kind.plotter(plan),
        new RunHistory(plan.charts().runRules().within(kind.tests())),
        new Thinner());
  }

  private Series(ChartKind kind, Plotter plotter, RunHistory history, Thinner settled) {
    this.kind = kind;
    this.plotter = plotter;
    this.history = history;
    this.settled = settled;
  }

  ChartKind kind() {
    return kind;
  }

  /** A scratch chart that goes on from here with no points of its own. */
  Series branch() {
    return new Series(kind, plotter.copy(), history.copy(), new Thinner());
  }

  void settle(long number, Point point, Estimate estimate, int phase, boolean frozen) {
    Plotted plotted = judge(number, point, estimate, phase, frozen);
    if (plotted != null) {
      settled.add(plotted);
      settledCount++;
      signalling += plotted.signals().isEmpty() ? 0 : 1;
    }
  }

  private @Nullable Plotted judge(
      long number, Point point, Estimate estimate, int phase, boolean frozen) {
    Place place = plotter.place(point, estimate);
    if (place == null || Double.isNaN(place.value())) {
      return null;
    }
    List<Signal> signals =
        point.excluded() ? List.of() : history.add(number, place.z(), estimate.sigma() > 0);
    return Plotted.of(number, point, place, basis(place, phase, frozen), signals);
  }

  private JudgedLimits basis(Place place, int phase, boolean frozen) {
    JudgedLimits now = place.basis(phase, frozen);
    basis = basis == null ? now : now.orSame(basis);
    return basis;
  }

  void startPhase() {
    plotter.restart();
    history.restart();
  }

  Thinner settled() {
    return settled;
  }

  long settledCount() {
    return settledCount;
  }

  /** Points that broke a run test. */
  long signalling() {
    return signalling;
  }

  void pack(Packer packer) {
    plotter.pack(packer);
    history.pack(packer);
    settled.pack(packer);
    packer.put(settledCount).put(signalling);
  }

  void unpack(Unpacker from) {
    plotter.unpack(from);
    history.unpack(from);
    settled.unpack(from);
    settledCount = from.aLong();
    signalling = from.aLong();
  }
}
