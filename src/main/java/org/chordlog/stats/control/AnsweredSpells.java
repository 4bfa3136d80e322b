package org.chordlog.stats.control;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Sorts spells into those that hold the verdict, and those that ended or were answered. */
final class AnsweredSpells {
  /** Points wanted before "in control" is said where the plan has no shorter baseline. */
  private static final int ENOUGH = 25;

  private final NewestPoints newest;
  private final Set<SignalKey> keys;
  private final long tests;
  private final List<Spell> held = new ArrayList<>();
  private final List<Spell> history = new ArrayList<>();
  private long ended;

  /** {@code points}: of all phases. */
  AnsweredSpells(NewestPoints newest, Set<SignalKey> keys, long points) {
    this.newest = newest;
    this.keys = keys;
    tests = points * (ControlTest.WINDOWS.length + 1);
  }

  void sort(SpellLog log) {
    log.forEachClosed(spell -> history.add(spell.among(tests).answered(answered(spell) > 0)));
    ended += log.closedCount();
    Spell found = log.open();
    if (found == null) {
      return;
    }
    Spell open = found.among(tests);
    long at = answered(open);
    Spell rest = at == 0 ? open : rest(open, at);
    if (rest != null) {
      held.add(rest);
    }
    if (at > 0) {
      ended++;
      history.add(open.answered(true));
    }
  }

  ControlVerdict verdict(int baseline, long points, int phase) {
    history.sort(Comparator.comparingLong(spell -> spell.called().number()));
    int left = Math.max(0, history.size() - ControlVerdict.KEPT);
    List<Spell> kept = history.subList(left, history.size());
    return new ControlVerdict(state(baseline, points), phase, kept, ended);
  }

  private ControlState state(int baseline, long points) {
    long needed = baseline == 0 ? ENOUGH : Math.min(ENOUGH, baseline);
    if (!held.isEmpty()) {
      return new ControlState.NotInControl(points, held);
    }
    return points < needed
        ? new ControlState.TooFew(points, needed)
        : new ControlState.InControl(points);
  }

  /** Last reading of its newest answered signal, 0 if none. */
  private long answered(Spell spell) {
    return keys.stream()
        .filter(key -> key.ofSpread() == spell.ofSpread())
        .mapToLong(SignalKey::lastReadingId)
        .filter(id -> id >= spell.since().lastReadingId() && id <= spell.newest().lastReadingId())
        .max()
        .orElse(0);
  }

  /** What the points after an answer still say by themselves; null if nothing. */
  private @Nullable Spell rest(Spell open, long answeredId) {
    for (int at = 0; at < newest.size(); at++) {
      int begin = begin(at, open, answeredId);
      if (begin >= 0) {
        return open.from(newest.get(begin).ref(), newest.get(at).ref());
      }
    }
    return null;
  }

  /**
   * Index of the first point of a window after the answer that ends {@code at} there and whose call
   * is still held; -1 if there is none.
   */
  private int begin(int at, Spell open, long answeredId) {
    for (int index = 0; index < ControlTest.WINDOWS.length; index++) {
      int begin = at - ControlTest.WINDOWS[index] + 1;
      boolean after = begin >= 0 && newest.get(begin).ref().lastReadingId() > answeredId;
      if (after && held(at, index) && newest.get(at).refused(open.ofSpread(), index)) {
        return begin;
      }
    }
    return -1;
  }

  private boolean held(int at, int index) {
    return newest.size() - at <= (index == 0 ? ControlWatch.FAR_HELD : ControlWatch.HELD);
  }
}
