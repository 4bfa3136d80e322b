package org.chordlog.capture;

import org.chordlog.capture.Capture.Phase;
import org.chordlog.measure.Sample;
import org.jspecify.annotations.Nullable;

/**
 * Tells one contact from the next. A contact begins when the plunger is pushed in from free air,
 * and ends when it is back there or more than half way out; lifted half way and set down again is a
 * new contact. Until free air was seen once nothing is armed: a reading of what the bridge is
 * standing on may have been taken before.
 */
final class Contacts {
  /** Up to this rate the plunger may be in the air for one sample only. */
  private static final long SLOW_PERIOD_NANOS = 90_000_000L;

  enum Change {
    NONE,
    BEGAN,
    ENDED
  }

  private enum State {
    UNARMED,
    FREE,
    CONTACT,
    LEAVING
  }

  private final Rests window;
  private final FreeAir freeAir;
  private final Arrivals arrivals = new Arrivals();
  private final Median median = new Median();
  private State state = State.UNARMED;
  private boolean taken;
  private int samples;
  private long sinceNanos;
  private long deepestNm;
  private long leastNm;
  private long pushedInNm;
  private long newestNm;

  Contacts(CaptureSettings settings, Rests window) {
    this.window = window;
    freeAir = new FreeAir(settings);
  }

  Change offer(Sample sample) {
    if (arrivals.gapBefore(sample.monotonicNanos())) {
      window.clear();
      median.clear();
    }
    boolean slow = arrivals.periodNanos() >= SLOW_PERIOD_NANOS;
    window.add(sample, slow);
    long middle = median.of(sample.valueNm());
    long value = slow ? sample.valueNm() : middle;
    newestNm = value;
    pushedInNm = freeAir.pushedInNm(value);
    return freeAir.touches(value) ? touching(sample) : air();
  }

  private Change air() {
    if (window.atRest() || (window.atRestBriefly() && freeAir.improvedBy(window.meanNm()))) {
      freeAir.restedAt(window.meanNm());
    }
    boolean ended = state == State.CONTACT;
    state = freeAir.known() ? State.FREE : State.UNARMED;
    return ended ? Change.ENDED : Change.NONE;
  }

  private Change touching(Sample sample) {
    return switch (state) {
      case UNARMED -> Change.NONE;
      case FREE -> begin(sample);
      case CONTACT -> stay();
      case LEAVING -> watchForReturn(sample);
    };
  }

  private Change begin(Sample sample) {
    state = State.CONTACT;
    freeAir.confirm();
    taken = false;
    samples = 1;
    sinceNanos = sample.monotonicNanos();
    deepestNm = pushedInNm;
    return Change.BEGAN;
  }

  private Change stay() {
    samples++;
    deepestNm = Math.max(deepestNm, pushedInNm);
    if (pushedInNm >= deepestNm / 2) {
      return Change.NONE;
    }
    state = State.LEAVING;
    leastNm = pushedInNm;
    return Change.ENDED;
  }

  private Change watchForReturn(Sample sample) {
    leastNm = Math.min(leastNm, pushedInNm);
    return pushedInNm > leastNm + deepestNm / 4 ? begin(sample) : Change.NONE;
  }

  /** After a gap: a contact that was taken, or may have been, is not taken again. */
  void reset() {
    window.clear();
    median.clear();
    arrivals.forgetLast();
    freeAir.unsee();
    samples = 0;
    if (state != State.CONTACT || taken) {
      state = State.UNARMED;
    }
  }

  /** The contact that may last goes on with the new level, or was none. */
  void freeAirIs(long levelNm) {
    freeAir.restedAt(levelNm);
    freeAir.confirm();
    boolean air = !freeAir.touches(newestNm);
    state = air ? State.FREE : state;
    deepestNm = Math.max(0, freeAir.pushedInNm(newestNm));
  }

  boolean inContact() {
    return state == State.CONTACT;
  }

  /** Whether the plunger is known to hang free. */
  boolean inFreeAir() {
    return state == State.FREE && freeAir.confirmed();
  }

  void take() {
    taken = true;
  }

  boolean taken() {
    return taken;
  }

  /** Whether the whole rest window lies within the contact. */
  boolean restsInContact() {
    return state == State.CONTACT && window.count() <= samples && window.atRest();
  }

  /** What was taken for a contact was free air, and this is the contact. */
  void relearn(long freeAirNm, Sample sample) {
    freeAir.restedAt(freeAirNm);
    pushedInNm = freeAir.pushedInNm(sample.valueNm());
    begin(sample);
    samples = window.count();
  }

  long pushedInNm(long valueNm) {
    return freeAir.pushedInNm(valueNm);
  }

  int samples() {
    return samples;
  }

  /** When the present or last contact began. */
  long sinceNanos() {
    return sinceNanos;
  }

  /** Usual time from one sample to the next; 0 before the second. */
  double periodNanos() {
    return arrivals.periodNanos();
  }

  @Nullable Long freeAirNm() {
    return freeAir.seenNm();
  }

  boolean freeAirKnown() {
    return freeAir.known();
  }

  long gapNanos() {
    return arrivals.gapNanos();
  }

  Phase phase() {
    return switch (state) {
      case FREE -> Phase.FREE;
      case LEAVING -> Phase.MOVING;
      case UNARMED -> freeAir.known() ? Phase.TAKEN : Phase.MOVING;
      case CONTACT -> taken ? Phase.TAKEN : still();
    };
  }

  private Phase still() {
    return window.still() ? Phase.RESTING : Phase.MOVING;
  }
}
