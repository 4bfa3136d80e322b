package org.chordlog.capture;

/** A double-ended queue of numbers without boxing. */
final class LongRing {
  private long[] items = new long[16];
  private int head;
  private int size;

  int size() {
    return size;
  }

  boolean isEmpty() {
    return size == 0;
  }

  long get(int index) {
    return items[(head + index) & (items.length - 1)];
  }

  long first() {
    return get(0);
  }

  long last() {
    return get(size - 1);
  }

  void addLast(long item) {
    if (size == items.length) {
      grow();
    }
    items[(head + size) & (items.length - 1)] = item;
    size++;
  }

  void removeFirst() {
    head = (head + 1) & (items.length - 1);
    size--;
  }

  void removeLast() {
    size--;
  }

  void clear() {
    head = 0;
    size = 0;
  }

  private void grow() {
    long[] wider = new long[items.length * 2];
    for (int i = 0; i < size; i++) {
      wider[i] = get(i);
    }
    items = wider;
    head = 0;
  }
}
