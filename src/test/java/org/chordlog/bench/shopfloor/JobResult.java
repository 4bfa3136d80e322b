package org.chordlog.bench.shopfloor;

import org.chordlog.simulator.DemoBend;

/** What came of one job. */
public final class JobResult {
  private static final int AFTER_LOT = 10;
  private static final int FIRST_GOOD_AT_MOST = 51;

  private double squares;
  private int bad;
  private final boolean[] corrected = new boolean[Shop.PIECES];
  private int firstGood = FIRST_GOOD_AT_MOST;
  private int sinceLot = -1;
  private int goodAfterLot;
  private int lots;
  private int lotsFirstGood;
  private double firstSquare;

  void corrected(int piece) {
    corrected[piece] = true;
  }

  void piece(int i, double offMm, boolean newLot) {
    boolean isBad = Math.abs(offMm) > DemoBend.TOLERANCE_MM;
    squares += offMm * offMm;
    firstSquare = i == 0 ? offMm * offMm : firstSquare;
    bad += isBad ? 1 : 0;
    firstGood = isBad ? firstGood : Math.min(firstGood, i + 1);
    sinceLot = newLot ? 0 : sinceLot;
    if (sinceLot >= 0) {
      afterLot(isBad);
    }
  }

  /** Counts the pieces to the first good one of a lot, of ten at most. */
  private void afterLot(boolean isBad) {
    sinceLot++;
    goodAfterLot = sinceLot == 1 ? 0 : goodAfterLot;
    if (goodAfterLot == 0 && (!isBad || sinceLot > AFTER_LOT)) {
      goodAfterLot = sinceLot;
      lots++;
      lotsFirstGood += sinceLot;
    }
  }

  double meanSquare() {
    return squares / Shop.PIECES;
  }

  double firstSquare() {
    return firstSquare;
  }

  double badShare() {
    return (double) bad / Shop.PIECES;
  }

  /** Moves before and after the same piece count once. */
  double corrections() {
    int count = 0;
    for (boolean each : corrected) {
      count += each ? 1 : 0;
    }
    return count;
  }

  double firstGood() {
    return firstGood;
  }

  /** Mean over the lots of the job, NaN without a change of lot. */
  double firstGoodAfterLot() {
    return lots == 0 ? Double.NaN : (double) lotsFirstGood / lots;
  }
}
