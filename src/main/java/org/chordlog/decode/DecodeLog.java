package org.chordlog.decode;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;

/** Counts of a decoder; written by the one who feeds it, read by anyone. */
final class DecodeLog {
  private final Deque<Decoded.Damaged> refused = new ArrayDeque<>(DecodeCounts.KEPT);
  private long values;
  private long statuses;
  private long damaged;
  private long unanswered;

  synchronized void add(long newValues, long newStatuses) {
    values += newValues;
    statuses += newStatuses;
  }

  synchronized void add(Decoded.Damaged frame) {
    damaged++;
    if (refused.size() == DecodeCounts.KEPT) {
      refused.removeFirst();
    }
    refused.addLast(frame);
  }

  synchronized void addUnanswered() {
    unanswered++;
  }

  synchronized DecodeCounts counts() {
    return new DecodeCounts(values, statuses, damaged, unanswered, new ArrayList<>(refused));
  }
}
