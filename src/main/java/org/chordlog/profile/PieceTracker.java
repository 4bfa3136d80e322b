package org.chordlog.profile;

import java.util.function.Consumer;
import org.chordlog.measure.Length;
import org.chordlog.measure.LengthSource;
import org.chordlog.measure.Quantity;
import org.chordlog.measure.Sentence;
import org.chordlog.profile.Refused.Reason;
import org.jspecify.annotations.Nullable;

/**
 * Tells one piece that runs through the gauge from the next, and sorts its depths into bins of
 * length. Time and length come only from its values, in the order of time. For one thread.
 */
public final class PieceTracker {
  private static final int CONFIRMED = 3;
  private static final long CONFIRMED_NM = 20_000_000;
  private static final long LEAST_NANOS = 50_000_000L;
  private static final double JUMP = 1.5;

  private final TrackSettings settings;
  private final FreeAirLevel freeAir;
  private final FineBins bins = new FineBins();
  private @Nullable RunningPiece piece;
  private boolean armed;
  private boolean touches;
  private int candidates;
  private long candidateSequence;
  private long candidateNanos;
  private long candidateNm;
  private boolean started;
  private long lastNanos;
  private long lastNm;

  public PieceTracker(TrackSettings settings) {
    this.settings = settings;
    freeAir = new FreeAirLevel(settings.freeAirNm());
  }

  /** A depth less its zero, with the length along the feed. */
  public void offer(
      long sequence, long nanos, long lengthNm, long depthNm, Consumer<PieceRun> sink) {
    freeAir.offer(depthNm);
    if (jumped(lengthNm, nanos)) {
      close(new Refused(Reason.LENGTH_JUMPED, jump(lengthNm)), sink);
    }
    started = true;
    lastNanos = nanos;
    lastNm = lengthNm;
    touches = freeAir.touches(depthNm);
    if (piece == null) {
      await(sequence, nanos, lengthNm);
    } else {
      run(piece, sequence, nanos, lengthNm, depthNm, sink);
    }
  }

  private boolean jumped(long lengthNm, long nanos) {
    double seconds = Math.max(LEAST_NANOS, nanos - lastNanos) / 1e9;
    double most = JUMP * settings.mostMmPerSecond() * seconds * 1e6;
    return started && settings.source().measured() && Math.abs(lengthNm - lastNm) > most;
  }

  private Sentence jump(long lengthNm) {
    return Sentence.of(
        "The length jumped by %s at %s, more than the greatest feed allows: counts were lost, or"
            + " the counter was reset.",
        Quantity.fixed(Length.mm(lengthNm - lastNm), 0), place());
  }

  /** Without a length there is no place. */
  private Sentence brokeOff(String what) {
    return settings.source() == LengthSource.NONE
        ? Sentence.of("The %s broke off in the middle of the piece.", what)
        : Sentence.of("The %s broke off in the middle of the piece, at %s.", what, place());
  }

  /** Of the newest depth, from the front of the piece. */
  private Quantity place() {
    return Quantity.fixed(Math.abs(Length.mm(lastNm - candidateNm)), 0);
  }

  private void await(long sequence, long nanos, long lengthNm) {
    if (!touches) {
      armed |= freeAir.known();
      candidates = 0;
      return;
    }
    if (!armed) {
      return;
    }
    if (candidates++ == 0) {
      candidateSequence = sequence;
      candidateNanos = nanos;
      candidateNm = lengthNm;
    }
    if (candidates >= CONFIRMED || Math.abs(lengthNm - candidateNm) >= CONFIRMED_NM) {
      candidates = 0;
      piece = new RunningPiece(settings, bins, candidateNm, candidateSequence, candidateNanos);
    }
  }

  private void run(
      RunningPiece running,
      long sequence,
      long nanos,
      long lengthNm,
      long depthNm,
      Consumer<PieceRun> sink) {
    if (freeAir.refutedBy(depthNm)) {
      running.refuse(
          new Refused(Reason.FREE_AIR_UNKNOWN, "Free air was not seen before this piece came."));
    }
    boolean atEnd = freeAir.pushedInNm(depthNm) >= settings.travelNm() - 2 * settings.stepNm();
    if (running.offer(sequence, nanos, lengthNm, depthNm, touches, atEnd, sink)) {
      piece = null;
      running.end(sink);
    }
  }

  /**
   * The stream broke off, or zero, bridge or set-up changed: a piece that runs gives no reading.
   */
  public void gap(Consumer<PieceRun> sink) {
    close(new Refused(Reason.GAP, brokeOff("stream")), sink);
    started = false;
  }

  /** The length is no longer known: a piece that runs gives no reading. */
  public void lengthLost(Consumer<PieceRun> sink) {
    close(new Refused(Reason.NO_LENGTH, "The length broke off in the middle of the piece."), sink);
    started = false;
  }

  private void close(Refused why, Consumer<PieceRun> sink) {
    if (piece != null) {
      RunningPiece running = piece;
      piece = null;
      running.refuse(why);
      running.end(sink);
    }
    armed = false;
    candidates = 0;
  }

  /** The piece that runs through at that time, or null. */
  public @Nullable LivePiece live(long nanos) {
    return piece == null ? null : piece.live(nanos);
  }

  /** Whether the plunger touched at the newest depth. */
  public boolean touches() {
    return touches;
  }

  /** Whether a piece runs through now. */
  public boolean running() {
    return piece != null;
  }

  /** Whether a piece that comes now would be told from its front on. */
  public boolean armed() {
    return armed && piece == null;
  }

  /** Depth less the zero in free air, null until it is known. */
  public @Nullable Long freeAirNm() {
    return freeAir.known() ? freeAir.levelNm() : null;
  }
}
