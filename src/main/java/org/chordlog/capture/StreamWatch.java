package org.chordlog.capture;

import java.util.function.Consumer;
import org.chordlog.measure.Sample;
import org.jspecify.annotations.Nullable;

/**
 * Watches what is shown in free air, where the plunger rests against its stop. It learns that level
 * from two lifts that end at the same value, follows a slow drift, and tells a jump. One thread
 * calls it.
 */
public final class StreamWatch {
  /** So many values in a row are no stray ones. */
  private static final int BEYOND = 5;

  /** By then a plunger on its way has come to rest, which names best what has happened. */
  private static final long UNTIL_REST_NANOS = 1_000_000_000L;

  /** Standard errors of a mean that noise alone may make. */
  private static final double NOISES = 6;

  private final CaptureSettings settings;
  private final Rests window;
  private final Arrivals arrivals = new Arrivals();
  private final Median median = new Median();
  private final Lifts lifts;
  private final AirLevel air;
  private final StillJump jump;
  private final FrozenAir frozen;
  private final MirroredAir mirrored;
  private final RecentRests before;
  private int beyondInARow;
  private long beyondSince;
  private int steadyInARow;
  private long steadyNm;

  /** Where free air may be, after it seemed to jump there. */
  private @Nullable Long suspectNm;

  /** Whether the plunger has been pushed in and let out since then. */
  private boolean lifted;

  private @Nullable StreamDoubt setting;
  private long restoredNm;

  public StreamWatch(CaptureSettings settings) {
    this.settings = settings;
    window = new Rests(settings);
    lifts = new Lifts(settings.contactNm());
    air = new AirLevel(settings);
    jump = new StillJump(settings);
    frozen = new FrozenAir(settings);
    mirrored = new MirroredAir(settings);
    before = new RecentRests(settings.contactNm());
  }

  /** What was shown in free air before this stream began, and how far from it is still it. */
  public void remember(long freeAirNm, long toNm) {
    air.remember(freeAirNm, toNm);
  }

  /**
   * A zero was set: what was remembered from before the stream belongs to the one before it, and so
   * does what was told from it.
   */
  public void zeroed(long nanos, Consumer<StreamDoubt> sink) {
    StreamDoubt told = setting;
    if (air.forgetRemembered() && told != null) {
      restore(told, nanos, sink);
    }
  }

  /** Tells what this sample shows, if it can't be. */
  public void offer(Sample sample, Consumer<StreamDoubt> sink) {
    if (arrivals.gapBefore(sample.monotonicNanos())) {
      window.clear();
      median.clear();
      jump.clear();
    }
    window.add(sample, false);
    frozen.offer(sample, air, sink);
    if (jump.offer(sample)) {
      jumped(sample, sink);
    }
    long middle = median.of(sample.valueNm());
    if (lifts.offer(middle)) {
      liftEnded(sample, sink);
    }
    lifted = suspectNm != null && (lifted || lifts.isIn());
    beyondStop(middle, sample, sink);
    boolean still = window.atRestBriefly() && window.count() >= AirLevel.LEAST_SAMPLES;
    if (still && lifts.atBottom(window.meanNm(), air.toleranceNm())) {
      restedAtBottom(sample, sink);
    }
    if (still) {
      before.rested(window.meanNm());
    }
    lookForMirror(still, sample, sink);
  }

  private void lookForMirror(boolean still, Sample sample, Consumer<StreamDoubt> sink) {
    Long level = air.probableNm();
    if (air.isProbably(sample.valueNm())) {
      mirrored.inAir();
      air.probablySeen(sample.monotonicNanos());
    } else if (still && level != null && mirrored.rested(window.meanNm(), level, air)) {
      air.believeProbable();
      tell(StreamDoubt.Kind.DIRECTION, sample, level, window.meanNm(), sink);
    }
  }

  /**
   * The plunger can't be farther out than its stop, at rest or not; a value on its way there says
   * less well what has happened than the one where it stays.
   */
  private void beyondStop(long middle, Sample sample, Consumer<StreamDoubt> sink) {
    Long level = air.levelNm();
    boolean beyond = level != null && middle < level - settings.contactNm();
    if (level == null || !beyond) {
      beyondInARow = 0;
      steadyInARow = 0;
      return;
    }
    steadyInARow = Math.abs(middle - steadyNm) <= settings.contactNm() ? steadyInARow + 1 : 1;
    steadyNm = steadyInARow > 1 ? steadyNm : middle;
    beyondSince = beyondInARow > 0 ? beyondSince : sample.monotonicNanos();
    beyondInARow++;
    boolean forLong = sample.monotonicNanos() - beyondSince >= UNTIL_REST_NANOS;
    if (steadyInARow >= BEYOND || (forLong && beyondInARow >= BEYOND)) {
      tell(moved(level, middle), sample, level, middle, sink);
    }
  }

  /** A rest at the lowest point of a lift: free air, as far as is known. */
  private void restedAtBottom(Sample sample, Consumer<StreamDoubt> sink) {
    long mean = window.meanNm();
    lifts.rested(mean);
    Long level = air.levelNm();
    if (level == null) {
      return;
    }
    double noise = Math.max(window.restNoiseNm(), air.noiseNm());
    double byNoise = NOISES * noise / Math.sqrt(window.count());
    Long suspect = suspectNm;
    if (air.isAt(mean)) {
      suspectNm = null;
      air.seen(sample.monotonicNanos(), window.restNoiseNm());
      restored(sample, sink);
    } else if (level - mean > air.toleranceNm() + byNoise || beyondTravel(mean - level)) {
      tell(moved(level, mean), sample, level, mean, sink);
    } else if (suspect != null && lifted && Math.abs(mean - suspect) <= air.toleranceNm()) {
      tell(StreamDoubt.Kind.ZERO_MOVED, sample, level, mean, sink);
    }
  }

  private boolean beyondTravel(long pushedInNm) {
    return pushedInNm > settings.plunger().travelNm() + settings.contactNm();
  }

  /** The plunger is pushed in again: where it had rested before is the bottom of that lift. */
  private void liftEnded(Sample sample, Consumer<StreamDoubt> sink) {
    Long bottom = lifts.takeBottom();
    if (bottom == null) {
      return;
    }
    Long level = air.levelNm();
    boolean believed = air.lifted(bottom, sample.monotonicNanos());
    if (level != null && !air.isAt(bottom)) {
      StreamDoubt.Kind kind = SettingChange.of(level, bottom, settings, air.toleranceNm());
      if (believed || (kind != null && air.repeats())) {
        tell(kind == null ? StreamDoubt.Kind.ZERO_MOVED : kind, sample, level, bottom, sink);
      }
    }
  }

  /** From one rest to another without a way between: no hand does that. */
  private void jumped(Sample sample, Consumer<StreamDoubt> sink) {
    Long level = air.levelNm();
    if (level == null || air.isAt(jump.toNm())) {
      return;
    }
    StreamDoubt.Kind kind = SettingChange.of(jump.fromNm(), jump.toNm(), settings, 0);
    if (kind != null) {
      tell(kind, sample, jump.fromNm(), jump.toNm(), sink);
    } else if (air.isAt(jump.fromNm())) {
      suspectNm = jump.toNm();
    }
  }

  private StreamDoubt.Kind moved(long fromNm, long toNm) {
    if (before.restedAt(-fromNm, air.toleranceNm()) || before.restedAt(-toNm, settings.bandNm())) {
      return StreamDoubt.Kind.DIRECTION;
    }
    StreamDoubt.Kind kind = SettingChange.of(fromNm, toNm, settings, air.toleranceNm());
    return kind == null ? StreamDoubt.Kind.ZERO_MOVED : kind;
  }

  private void tell(
      StreamDoubt.Kind kind, Sample sample, long fromNm, long toNm, Consumer<StreamDoubt> sink) {
    if (setting != null) {
      return;
    }
    StreamDoubt doubt =
        new StreamDoubt(kind, sample.monotonicNanos(), air.seenNanos(), fromNm, toNm);
    if (kind.forbidsReadings()) {
      setting = doubt;
      restoredNm = air.levelOr(fromNm);
    } else {
      air.movedTo(toNm, sample.monotonicNanos());
      suspectNm = null;
    }
    sink.accept(doubt);
  }

  private void restored(Sample sample, Consumer<StreamDoubt> sink) {
    StreamDoubt told = setting;
    if (told != null) {
      restore(told, sample.monotonicNanos(), sink);
    }
  }

  private void restore(StreamDoubt told, long nanos, Consumer<StreamDoubt> sink) {
    setting = null;
    sink.accept(
        new StreamDoubt(
            StreamDoubt.Kind.RESTORED, nanos, told.sinceNanos(), told.toNm(), restoredNm));
  }
}
