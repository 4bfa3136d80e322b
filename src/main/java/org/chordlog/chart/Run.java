package org.chordlog.chart;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import org.chordlog.stats.control.ChartPoint;
import org.chordlog.stats.control.RunTest;
import org.chordlog.stats.control.Signal;

/** Points in a row that broke a run test together, from the first to the last of them. */
record Run(RunTest test, Signal.Side side, long from, long to) {
  /** In the order of their first points; the runs of one test that touch are one. */
  static List<Run> of(List<ChartPoint> points) {
    List<Run> runs = new ArrayList<>();
    for (ChartPoint point : points) {
      if (point.signalling()) {
        point.signals().forEach(signal -> add(runs, signal));
      }
    }
    runs.sort(Comparator.comparingLong(Run::from));
    return runs;
  }

  /** A single point beyond a limit is no run: its own sign says so. */
  private static void add(List<Run> runs, Signal signal) {
    RunTest test = RunTest.numbered(signal.test());
    if (test == RunTest.BEYOND_LIMIT) {
      return;
    }
    Run run =
        new Run(
            test,
            signal.side(),
            Collections.min(signal.points()),
            Collections.max(signal.points()));
    for (int i = 0; i < runs.size(); i++) {
      if (runs.get(i).touches(run)) {
        runs.set(i, runs.get(i).with(run));
        return;
      }
    }
    runs.add(run);
  }

  /** Points that belong to one run, or to several that overlap. */
  record Stretch(long from, long to) {}

  /** The points of all runs, which are in the order of their first points. */
  static List<Stretch> stretches(List<Run> runs) {
    List<Stretch> all = new ArrayList<>();
    for (Run run : runs) {
      int last = all.size() - 1;
      if (last >= 0 && run.from <= all.get(last).to() + 1) {
        Stretch before = all.get(last);
        all.set(last, new Stretch(before.from(), Math.max(before.to(), run.to)));
      } else {
        all.add(new Stretch(run.from, run.to));
      }
    }
    return all;
  }

  private boolean touches(Run run) {
    return run.test == test && run.side == side && run.from <= to + 1 && run.to >= from - 1;
  }

  private Run with(Run run) {
    return new Run(test, side, Math.min(from, run.from), Math.max(to, run.to));
  }

  /** What the points did, for example "11 in a row above". */
  String words() {
    long count = to - from + 1;
    String where =
        Objects.requireNonNull(
            switch (side) {
              case ABOVE -> "above";
              case BELOW -> "below";
              case BOTH -> "";
            });
    return switch (test) {
      case BEYOND_LIMIT -> "beyond a limit";
      case SAME_SIDE -> count + " in a row " + where;
      case TREND -> count + (side == Signal.Side.ABOVE ? " rising" : " falling");
      case ALTERNATING -> count + " up and down";
      case NEAR_LIMIT -> "near the limit " + where;
      case OFF_CENTRE -> "off centre " + where;
      case HUGGING -> count + " close to the centre";
      case AVOIDING -> count + " away from the centre";
    };
  }
}
