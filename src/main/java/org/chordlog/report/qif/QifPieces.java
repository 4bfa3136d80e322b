package org.chordlog.report.qif;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.chordlog.measure.Reading;

/**
 * Pieces and the groups of readings taken on one piece without another between them; a piece that
 * was measured again later has several groups.
 */
final class QifPieces {
  private final Ints pieceOf = new Ints();
  private final Ints lengthOf = new Ints();
  private final List<QifStatus> statusOf = new ArrayList<>();
  private final Ints lotOf = new Ints();
  private final List<String> lots = new ArrayList<>();
  private final Map<String, Integer> lotNumbers = new HashMap<>();
  private final Map<Integer, QifStatus> byPosition = new HashMap<>();
  private final String jobLot;
  private int[] distinct = {};
  private int piece;
  private int lot;
  private int length;

  /** {@code jobLot} is the lot of readings that recorded none. */
  QifPieces(String jobLot) {
    this.jobLot = jobLot;
  }

  void take(QifReading each, int position) {
    Reading reading = each.reading();
    if (length > 0 && reading.piece() != piece) {
      endGroup();
    }
    piece = reading.piece();
    String named = reading.circumstances().materialLot();
    lot = lotNumbers.computeIfAbsent(named == null ? jobLot : named, this::newLot);
    length++;
    if (!each.excluded() && each.ofProduct()) {
      byPosition.put(position, QifStatus.piece(each.decision()));
    }
  }

  private int newLot(String name) {
    lots.add(name);
    return lots.size() - 1;
  }

  /** The last reading at each position counts; without any the status is unknown. */
  private void endGroup() {
    pieceOf.add(piece);
    lengthOf.add(length);
    lotOf.add(lot);
    QifStatus status =
        byPosition.values().stream().reduce(QifStatus::and).orElse(QifStatus.UNKNOWN);
    statusOf.add(status);
    byPosition.clear();
    length = 0;
  }

  void end() {
    if (length > 0) {
      endGroup();
    }
    distinct = Arrays.stream(pieceOf.toArray()).sorted().distinct().toArray();
  }

  int groups() {
    return pieceOf.size();
  }

  int length(int group) {
    return lengthOf.get(group);
  }

  QifStatus status(int group) {
    return statusOf.get(group);
  }

  /** Count of pieces. */
  int count() {
    return distinct.length;
  }

  /** The piece's own number, by its index in ascending order. */
  int number(int index) {
    return distinct[index];
  }

  /** Index of the piece that a group belongs to. */
  int index(int group) {
    return Arrays.binarySearch(distinct, pieceOf.get(group));
  }

  /** Status and newest lot of each piece over all its groups. */
  Whole whole() {
    QifStatus[] status = new QifStatus[distinct.length];
    int[] lotOfPiece = new int[distinct.length];
    for (int group = 0; group < groups(); group++) {
      int at = index(group);
      QifStatus own = status(group);
      status[at] = lotOfPiece[at] == 0 ? own : status[at].and(own);
      lotOfPiece[at] = lotOf.get(group) + 1;
    }
    return new Whole(status, lotOfPiece, lots);
  }

  /** Pieces by their index; lots are numbered from 1. */
  static final class Whole {
    private final QifStatus[] status;
    private final int[] lotOfPiece;
    private final List<String> lots;

    private Whole(QifStatus[] status, int[] lotOfPiece, List<String> lots) {
      this.status = status;
      this.lotOfPiece = lotOfPiece;
      this.lots = lots;
    }

    QifStatus status(int index) {
      return status[index];
    }

    String lot(int index) {
      return lots.get(lotOfPiece[index] - 1);
    }
  }
}
