package org.chordlog.station;

import java.util.concurrent.CompletableFuture;
import java.util.function.UnaryOperator;
import org.chordlog.measure.Reading;
import org.jspecify.annotations.Nullable;

/**
 * What the present contact gave, and whether it is on a piece; used by the station's thread alone.
 */
final class PresentContact {
  /** Farther than rocking goes: so much away from where it stood, it stands on something else. */
  private static final long ELSEWHERE_NM = 500_000;

  private @Nullable CompletableFuture<Reading> reading;
  private @Nullable Long noPieceNm;

  void ended() {
    reading = null;
    noPieceNm = null;
  }

  void gaveNothing() {
    reading = null;
  }

  void saw(long valueNm) {
    if (noPieceNm != null && Math.abs(valueNm - noPieceNm) > ELSEWHERE_NM) {
      noPieceNm = null;
    }
  }

  void gave(CompletableFuture<Reading> kept) {
    reading = kept;
  }

  /** The reading it gave was moved to another job. */
  void moved(UnaryOperator<CompletableFuture<Reading>> there) {
    reading = reading == null ? null : there.apply(reading);
  }

  /** The bridge stands on a flat or a master: what is captured from now on is no reading. */
  void standsOnNoPiece(long valueNm) {
    noPieceNm = valueNm;
  }

  boolean onNoPiece() {
    return noPieceNm != null;
  }

  /** The reading it gave, done once that is committed; null if none. */
  @Nullable CompletableFuture<Reading> reading() {
    return reading;
  }
}
