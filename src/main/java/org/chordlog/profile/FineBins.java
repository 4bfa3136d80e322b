package org.chordlog.profile;

import java.util.Arrays;

/**
 * Bins of 5 mm of length from where a touch began. In each place the last traverse alone counts: a
 * bin that an older one filled is emptied first, so that stops and reversals leave nothing behind.
 */
final class FineBins {
  static final long WIDTH_NM = 5_000_000;
  static final int MOST = 20_000;

  private int[] count = new int[64];
  private int[] traverse = new int[64];
  private byte[] flags = new byte[64];
  private long[] depthSum = new long[64];
  private long[] placeSum = new long[64];
  private int size;
  private int firstIndex;

  static int index(long placeNm) {
    return (int) Math.max(Integer.MIN_VALUE / 2, Math.floorDiv(placeNm, WIDTH_NM));
  }

  void clear() {
    size = 0;
    firstIndex = 0;
  }

  /** Whether there is room at that place; before the first bin a value is ignored. */
  boolean holds(long placeNm) {
    return index(placeNm) - firstIndex < MOST;
  }

  void add(long placeNm, long depthNm, int byTraverse, int flag) {
    int i = index(placeNm) - firstIndex;
    if (i < 0 || i >= MOST) {
      return;
    }
    reserve(i);
    if (traverse[i] != byTraverse) {
      empty(i);
      traverse[i] = byTraverse;
    }
    count[i]++;
    depthSum[i] += depthNm;
    placeSum[i] += placeNm - (i + firstIndex) * WIDTH_NM;
    flags[i] |= (byte) flag;
  }

  private void empty(int i) {
    count[i] = 0;
    depthSum[i] = 0;
    placeSum[i] = 0;
    flags[i] = 0;
  }

  private void reserve(int i) {
    if (i >= count.length) {
      int room = Math.min(MOST, Math.max(i + 1, 2 * count.length));
      count = Arrays.copyOf(count, room);
      traverse = Arrays.copyOf(traverse, room);
      flags = Arrays.copyOf(flags, room);
      depthSum = Arrays.copyOf(depthSum, room);
      placeSum = Arrays.copyOf(placeSum, room);
    }
    for (; size <= i; size++) {
      empty(size);
      traverse[size] = 0;
    }
  }

  /** Forgets what lies before that bin of 5 mm. */
  void dropBefore(int index) {
    int drop = Math.min(size, Math.max(0, index - firstIndex));
    System.arraycopy(count, drop, count, 0, size - drop);
    System.arraycopy(traverse, drop, traverse, 0, size - drop);
    System.arraycopy(flags, drop, flags, 0, size - drop);
    System.arraycopy(depthSum, drop, depthSum, 0, size - drop);
    System.arraycopy(placeSum, drop, placeSum, 0, size - drop);
    size -= drop;
    firstIndex += drop;
  }

  /** Index behind the last bin. */
  int end() {
    return firstIndex + size;
  }

  int first() {
    return firstIndex;
  }

  int count(int index) {
    return inside(index) ? count[index - firstIndex] : 0;
  }

  int traverse(int index) {
    return inside(index) ? traverse[index - firstIndex] : 0;
  }

  int flags(int index) {
    return inside(index) ? flags[index - firstIndex] : 0;
  }

  long depthSum(int index) {
    return inside(index) ? depthSum[index - firstIndex] : 0;
  }

  /** Sum of the places from the start of the bin. */
  long placeSum(int index) {
    return inside(index) ? placeSum[index - firstIndex] : 0;
  }

  private boolean inside(int index) {
    return index >= firstIndex && index < firstIndex + size;
  }
}
