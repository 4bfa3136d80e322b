package org.chordlog.stats.control;

import java.util.Set;
import org.chordlog.stats.control.ControlTest.Difference;
import org.chordlog.stats.control.Signal.Side;
import org.chordlog.stats.math.Packer;
import org.chordlog.stats.math.Unpacker;
import org.jspecify.annotations.Nullable;

/**
 * Watches whether the points of a phase go on as they began: the newest 1 to 20 are compared with
 * those before, of which the first {@value NewestPoints#REFERENCE} without a spell count, so that
 * the comparison gets surer while a phase goes on and does not follow a slow change. A call is held
 * for {@value #FAR_HELD} points after a far one, {@value #HELD} after any other, and goes with its
 * evidence. An update and a verdict cost the same however long the phase is.
 */
public final class ControlWatch {
  static final int FAR_HELD = 10;
  static final int HELD = 2;

  /** At that many points each is looked at once against all others. */
  private static final int BEGINNING = 20;

  private final StatisticsPlan plan;
  private final ControlTest test;
  private final NewestPoints newest = new NewestPoints();
  private final SpellLog level = new SpellLog();
  private final SpellLog spread = new SpellLog();
  private long number;
  private int phase = 1;
  private long points;
  private double origin;
  private double step = Double.POSITIVE_INFINITY;
  private double previous = Double.NaN;

  /** Of the newest point, where it is far off: its side. */
  private @Nullable Side far;

  public ControlWatch(StatisticsPlan plan) {
    this.plan = plan;
    test = new ControlTest(plan);
  }

  /** The points of a chart in their order, excluded ones too. */
  public void add(Point point) {
    number++;
    if (point.excluded()) {
      return;
    }
    begin(point.mean());
    points++;
    newest.add(new WatchedPoint(PointRef.of(number, point), Sums.of(point, origin)));
    judge();
    if (points == BEGINNING) {
      lookBack();
    }
    level.passed(points);
    spread.passed(points);
  }

  private void begin(double value) {
    ChartSettings.Standard standard = plan.charts().standard();
    origin = standard != null ? standard.mean() : points == 0 ? value : origin;
    double change = Math.abs(value - previous);
    step = change > 0 ? Math.min(step, change) : step;
    previous = value;
  }

  private void judge() {
    Sums before = newest.good();
    Sums window = new Sums();
    int index = 0;
    int strange = 0;
    far = null;
    for (int count = 1; count <= Math.min(newest.size(), ControlTest.LONGEST); count++) {
      take(newest.back(count), before, window);
      if (count == ControlTest.WINDOWS[index]) {
        Sums judged = index == 0 ? window : newest.withoutLoneFarPoint(count, window);
        strange = Math.max(strange, judge(index++, before, judged));
      }
    }
    newest.markStrange(strange);
  }

  private static void take(WatchedPoint next, Sums before, Sums window) {
    window.add(next.sums());
    if (!next.strange()) {
      before.subtract(next.sums());
    }
  }

  /** Count of newest points that are strange by that window. */
  private int judge(int index, Sums before, Sums window) {
    if (!test.possible(before)) {
      return 0;
    }
    if (index == ControlTest.SPREAD_WINDOW) {
      judgeSpread(before, window);
    }
    Difference difference = test.difference(before, window, floor());
    Side side = side(difference);
    if (!(index == 0 ? test.far(difference) : test.moved(difference)) || contradicts(side)) {
      return 0;
    }
    newest.last().markMoved(index);
    far = index == 0 ? side : far;
    Spell.Kind kind = index == 0 ? Spell.Kind.FAR_POINT : Spell.Kind.LEVEL;
    PointRef since = index == 0 ? newest.last().ref() : change(side);
    Spell found = found(kind, side, since, difference.chance());
    level.add(found, points + (index == 0 ? FAR_HELD : HELD) - 1);
    return ControlTest.WINDOWS[index];
  }

  /** A point far above is no news of a level that is lower. */
  private boolean contradicts(Side side) {
    return far != null && far != side;
  }

  private void judgeSpread(Sums before, Sums window) {
    double chance = test.widerChance(before, window);
    if (test.wider(chance)) {
      newest.last().markWider();
      PointRef since = newest.back(ControlTest.WINDOWS[ControlTest.SPREAD_WINDOW]).ref();
      spread.add(found(Spell.Kind.SPREAD, Side.ABOVE, since, chance), points + HELD - 1);
    }
  }

  private Spell found(Spell.Kind kind, Side side, PointRef since, double chance) {
    PointRef now = newest.last().ref();
    return new Spell(phase, kind, side, since, now, now, 1, chance, false);
  }

  /** Where the newest points begin that differ most, that way, from those before. */
  private PointRef change(Side side) {
    Sums before = newest.good();
    Sums window = new Sums();
    PointRef since = newest.last().ref();
    double most = 0;
    for (int count = 1; count <= Math.min(newest.size(), ControlTest.LONGEST); count++) {
      take(newest.back(count), before, window);
      double t = test.possible(before) ? towards(side, before, count, window) : 0;
      since = t > most ? newest.back(count).ref() : since;
      most = Math.max(most, t);
    }
    return since;
  }

  private double towards(Side side, Sums before, int count, Sums window) {
    Sums judged = count == 1 ? window : newest.withoutLoneFarPoint(count, window);
    double t = test.difference(before, judged, floor()).t();
    return side == Side.ABOVE ? t : -t;
  }

  /** A far point among the first ones would hide all that follows. */
  private void lookBack() {
    Sums all = newest.good();
    for (int i = 0; i < newest.size(); i++) {
      WatchedPoint each = newest.get(i);
      Sums others = all.without(each.sums());
      if (!each.strange() && test.possible(others)) {
        Difference difference = test.difference(others, each.sums(), floor());
        if (test.far(difference)) {
          each.markStrange();
          level.record(ended(each.ref(), difference));
        }
      }
    }
  }

  private Spell ended(PointRef at, Difference difference) {
    return new Spell(
        phase,
        Spell.Kind.FAR_POINT,
        side(difference),
        at,
        newest.last().ref(),
        at,
        1,
        difference.chance(),
        false);
  }

  private static Side side(Difference difference) {
    return difference.t() > 0 ? Side.ABOVE : Side.BELOW;
  }

  /** Single readings that come in steps vary by half a step at least. */
  private double floor() {
    return plan.subgrouped() || Double.isInfinite(step) ? 0 : step / 2;
  }

  /** What comes is compared only with what comes after this. */
  public void startPhase() {
    level.startPhase();
    spread.startPhase();
    newest.clear();
    points = 0;
    phase++;
    step = Double.POSITIVE_INFINITY;
    previous = Double.NaN;
  }

  /** The verdict on all points so far, but for the signals that were answered. */
  public ControlVerdict verdict(Set<SignalKey> answered) {
    AnsweredSpells spells = new AnsweredSpells(newest, answered, number);
    spells.sort(level);
    spells.sort(spread);
    return spells.verdict(plan.charts().baselinePoints(), points, phase);
  }

  /** Writes the whole state. */
  public void pack(Packer packer) {
    packer.put(number).put(phase).put(points).put(origin).put(step).put(previous);
    newest.pack(packer);
    level.pack(packer);
    spread.pack(packer);
  }

  /** Takes up the state that was written. */
  public void unpack(Unpacker from) {
    number = from.aLong();
    phase = from.anInt();
    points = from.aLong();
    origin = from.aDouble();
    step = from.aDouble();
    previous = from.aDouble();
    newest.unpack(from);
    level.unpack(from);
    spread.unpack(from);
  }
}
