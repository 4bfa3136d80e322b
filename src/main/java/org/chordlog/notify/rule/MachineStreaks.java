package org.chordlog.notify.rule;

import static org.chordlog.measure.alert.AlertKind.LIMIT_AHEAD;
import static org.chordlog.measure.alert.AlertKind.ROLLER_CREEPS;
import static org.chordlog.measure.alert.AlertKind.ROLLER_JUMPED;

import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import org.chordlog.measure.alert.AlertKind;

/**
 * How many judgements of a machine in a row said the same. Judgements are made at fixed counts of
 * pieces alone, never because somebody looks, and it takes three in a row to raise an alert and two
 * to end one: a single verdict is wrong by chance in up to 1 % of cases, and one that is wrong
 * stays so for a while.
 */
public record MachineStreaks(
    int moved, int near, int withoutCreep, int withoutJump, int withoutLimit) {
  /** A judgement each so many pieces. */
  public static final int PIECES = 15;

  public static final MachineStreaks NONE = new MachineStreaks(0, 0, 0, 0, 0);

  /** The kinds that are judged so. */
  public static final Set<AlertKind> KINDS =
      Set.copyOf(EnumSet.of(ROLLER_CREEPS, ROLLER_JUMPED, LIMIT_AHEAD));

  private static final int TO_RAISE = 3;

  /** A jump is told only where it is plain. */
  private static final int TO_RAISE_A_JUMP = 2;

  private static final int TO_END = 2;
  private static final int BASE = 8;

  /** Whether a judgement is due, by complete pieces now and at the last one. */
  public static boolean due(long completePieces, long judgedAt) {
    return completePieces / PIECES > judgedAt / PIECES;
  }

  /** After one more judgement; one on too few pieces changes nothing. */
  public MachineStreaks after(MachineJudgement now) {
    return !now.tells()
        ? this
        : new MachineStreaks(
            count(now.moved(), moved),
            count(now.reachesWithin(MachineJudgement.NEAR), near),
            count(!said(now, ROLLER_CREEPS), withoutCreep),
            count(!said(now, ROLLER_JUMPED), withoutJump),
            count(!now.reachesWithin(2 * MachineJudgement.NEAR), withoutLimit));
  }

  private static boolean said(MachineJudgement now, AlertKind kind) {
    return now.kind().filter(kind::equals).isPresent();
  }

  private static int count(boolean so, int before) {
    return so ? Math.min(BASE - 1, before + 1) : 0;
  }

  /**
   * What is to be told after this judgement, which these streaks include. One cause is one alert:
   * where a creep is told, a near limit is told with it; while only a limit is told, its creep is
   * not told beside it. {@code open}: the kinds that are open for the machine.
   */
  public Optional<Found> appeared(MachineJudgement now, Set<AlertKind> open) {
    if (!now.tells()) {
      return Optional.empty();
    }
    Optional<AlertKind> moves = now.kind().filter(this::oftenEnough);
    boolean limitNear = near >= TO_RAISE;
    if (limitNear && open.contains(ROLLER_CREEPS)) {
      return Optional.of(now.found(ROLLER_CREEPS, true));
    }
    if (limitNear && (moves.isEmpty() || open.contains(LIMIT_AHEAD))) {
      return Optional.of(now.found(LIMIT_AHEAD, true));
    }
    return moves
        .filter(kind -> kind != ROLLER_CREEPS || !open.contains(LIMIT_AHEAD))
        .map(kind -> now.found(kind, limitNear));
  }

  /**
   * The kinds that what appeared now takes the place of: what was told as a creep turned out to
   * have come at once.
   */
  public static Set<AlertKind> replaced(MachineJudgement now, Optional<Found> appeared) {
    boolean jumped = appeared.filter(each -> each.key().kind() == ROLLER_JUMPED).isPresent();
    return jumped && !now.creepsToo()
        ? EnumSet.of(ROLLER_CREEPS, LIMIT_AHEAD)
        : EnumSet.noneOf(AlertKind.class);
  }

  private boolean oftenEnough(AlertKind kind) {
    return moved >= (kind == ROLLER_JUMPED ? TO_RAISE_A_JUMP : TO_RAISE);
  }

  /** Which kinds are over; a creep while it neither matters nor nears a limit. */
  public Set<AlertKind> gone() {
    Set<AlertKind> gone = EnumSet.noneOf(AlertKind.class);
    add(gone, ROLLER_CREEPS, Math.min(withoutCreep, withoutLimit));
    add(gone, ROLLER_JUMPED, withoutJump);
    add(gone, LIMIT_AHEAD, withoutLimit);
    return gone;
  }

  private static void add(Set<AlertKind> gone, AlertKind kind, int without) {
    if (without >= TO_END) {
      gone.add(kind);
    }
  }

  /** As one number, for the store. */
  public long packed() {
    long packed = 0;
    for (int each : new int[] {moved, near, withoutCreep, withoutJump, withoutLimit}) {
      packed = packed * BASE + each;
    }
    return packed;
  }

  /** What {@link #packed} made. */
  public static MachineStreaks unpacked(long packed) {
    int[] all = new int[5];
    long rest = packed;
    for (int i = all.length - 1; i >= 0; i--) {
      all[i] = (int) (rest % BASE);
      rest /= BASE;
    }
    return new MachineStreaks(all[0], all[1], all[2], all[3], all[4]);
  }
}
