package org.chordlog.bench;

import static org.chordlog.bench.LineMeans.text;

import java.util.ArrayList;
import java.util.List;

/** Which roller: pieces of 6 m at 100 mm/s unless said, with and without ripple and wander. */
final class LineRipples {
  private static final double FEED = 100;
  private static final double[][] WITHOUT = {
    // span, rate, wander %
    {100, 20, 0}, {100, 20, 0.1}, {100, 20, 0.3},
    {200, 20, 0}, {200, 20, 0.1}, {200, 20, 0.3},
    {500, 20, 0}, {500, 20, 0.1}, {500, 20, 0.3},
    {200, 5, 0.1}, {200, 100, 0.1},
  };
  private static final double[][] WITH = {
    // span, rate, wander %, ripple %
    {200, 20, 0, 0.05}, {200, 20, 0.1, 0.05}, {200, 20, 0.1, 0.1}, {200, 20, 0.1, 0.2},
    {200, 20, 0.3, 0.2}, {200, 20, 0.3, 0.4}, {100, 20, 0.1, 0.1}, {100, 20, 0.1, 0.2},
    {500, 20, 0.1, 0.1}, {500, 20, 0.1, 0.2},
  };

  private final StringBuilder table = new StringBuilder(RippleTrial.head()).append('\n');
  private final List<RippleTrial> without = new ArrayList<>();
  private final List<RippleTrial> atTwoTenths = new ArrayList<>();
  private final List<RippleTrial> oval = new ArrayList<>();
  private RippleTrial noWander = new RippleTrial();
  private final RippleTrial all = new RippleTrial();

  /** Groups of five without ripple, and a third as many with. */
  void run(int groups, long seed) {
    for (double[] cell : WITHOUT) {
      without.add(cell(cell[0], cell[1], cell[2], 0, groups, seed));
    }
    for (double[] cell : WITH) {
      RippleTrial trial = cell(cell[0], cell[1], cell[2], cell[3], Math.max(2, groups / 3), seed);
      all.add(trial);
      if (cell[2] == 0) {
        noWander = trial;
      }
      if (cell[2] == 0.1 && cell[3] == 0.2) {
        atTwoTenths.add(trial);
      }
    }
  }

  /** Out of round by 0.2 %, wander 0.1 %; a span of 500 mm does not show so short a wave. */
  void runOval(int groups, long seed) {
    for (double span : new double[] {100, 200}) {
      RippleTrial trial = new RippleTrial();
      LineSetting setting = LineSetting.of(span, 20, FEED, 6000).withWander(0.1);
      trial.runOval(setting, 0.2, Math.max(2, groups / 3), seed);
      String name = text("span %.0f, 20/s, wander 0.1 %%, out of round 0.20 %%", span);
      table.append(trial.row(name)).append('\n');
      oval.add(trial);
    }
  }

  private RippleTrial cell(
      double span, double rate, double wander, double ripple, int groups, long seed) {
    RippleTrial trial = new RippleTrial();
    LineSetting setting = LineSetting.of(span, rate, FEED, 6000).withWander(wander);
    trial.run(setting, ripple, groups, seed);
    table
        .append(
            trial.row(
                text(
                    "span %.0f, %.0f/s, wander %.1f %%, ripple %.2f %%",
                    span, rate, wander, ripple)))
        .append('\n');
    return trial;
  }

  String table() {
    return table.toString();
  }

  List<Bar> bars() {
    RippleTrial two = new RippleTrial();
    atTwoTenths.forEach(two::add);
    RippleTrial none = new RippleTrial();
    without.forEach(none::add);
    double worst = without.stream().mapToDouble(RippleTrial::named).max().orElse(100);
    double worstGroups = without.stream().mapToDouble(RippleTrial::groupsNamed).max().orElse(100);
    List<Bar> bars = new ArrayList<>(ovalBars(none));
    bars.addAll(
        List.of(
            new Bar(
                "roller named: span 200, no wander, ripple 0.05 %",
                "at least 99 %",
                text("%d of %d", noWander.singleRight, noWander.singles),
                noWander.singleRight >= 0.99 * noWander.singles),
            new Bar(
                "roller named right: wander 0.1 %, ripple 0.2 %, spans 100 to 500",
                "at least 80 % of single pieces, 95 % of fives",
                text(
                    "%d of %d; %d of %d", two.singleRight, two.singles, two.groupRight, two.groups),
                two.singleRight >= 0.8 * two.singles && two.groupRight >= 0.95 * two.groups),
            new Bar(
                "false alarms: wander 0, 0.1, 0.3 %, spans 100 to 500",
                "at most 1.5 % (1 % stated)",
                text(
                    "%d of %d single pieces, %d of %d fives; worst cell %.1f %%, fives %.1f %%",
                    none.singleNamed,
                    none.singles,
                    none.groupNamed,
                    none.groups,
                    worst,
                    worstGroups),
                worst <= 1.5 && none.groupNamed <= 0.015 * none.groups),
            new Bar(
                "wrong roller, of all with a ripple",
                "at most 1 %",
                text(
                    "%d of %d single pieces, %d of %d fives (one of two, not told: %d)",
                    all.wrong(), all.singles, all.groupsWrong(), all.groups, all.unsure),
                all.wrong() <= 0.01 * all.singles && all.groupsWrong() <= 0.01 * all.groups),
            new Bar(
                "chart of a roller's ripple without one: pieces beyond its limit",
                "0.21 % of an exponential; at most 1 %",
                text("%.2f %% of %d points", none.driftAlarmPercent(), none.driftPoints),
                none.driftAlarmPercent() <= 1)));
    return bars;
  }

  /** Twice a turn; {@code none}: trials without any ripple. */
  private List<Bar> ovalBars(RippleTrial none) {
    RippleTrial found = new RippleTrial();
    oval.forEach(found::add);
    return List.of(
        new Bar(
            "out of round: wander 0.1 %, ripple 0.2 % twice a turn, spans 100 and 200",
            "at least 80 % of single pieces, 95 % of fives",
            text(
                "%d of %d; %d of %d",
                found.twiceRight, found.singles, found.twiceGroupRight, found.groups),
            found.twiceRight >= 0.8 * found.singles
                && found.twiceGroupRight >= 0.95 * found.groups),
        new Bar(
            "false alarms of two waves a turn, without and with a ripple once a turn",
            "at most 1.5 %",
            text(
                "%d of %d single pieces, %d of %d fives; with: %d of %d, %d of %d",
                none.twiceNamed,
                none.singles,
                none.twiceGroupNamed,
                none.groups,
                all.twiceNamed,
                all.singles,
                all.twiceGroupNamed,
                all.groups),
            none.twiceNamed <= 0.015 * none.singles
                && none.twiceGroupNamed <= 0.015 * none.groups
                && all.twiceNamed <= 0.015 * all.singles));
  }
}
