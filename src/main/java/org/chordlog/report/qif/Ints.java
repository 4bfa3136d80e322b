package org.chordlog.report.qif;

import java.util.Arrays;

/** Whole numbers in a growing array, four bytes each. */
final class Ints {
  private int[] values = new int[64];
  private int size;

  void add(int value) {
    if (size == values.length) {
      values = Arrays.copyOf(values, 2 * size);
    }
    values[size++] = value;
  }

  int get(int at) {
    return values[at];
  }

  int size() {
    return size;
  }

  int[] toArray() {
    return Arrays.copyOf(values, size);
  }
}
