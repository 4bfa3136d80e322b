package org.chordlog.capture;

import org.chordlog.measure.Sample;

/** The samples of one contact, at most {@value #MOST_SAMPLES}; older ones are forgotten. */
final class ContactTrace {
  static final int MOST_SAMPLES = 1 << 16;
  private final LongRing times = new LongRing();
  private final LongRing values = new LongRing();
  private final LongRing pushedIn = new LongRing();
  private final LongRing sequences = new LongRing();

  void clear() {
    for (LongRing ring : rings()) {
      ring.clear();
    }
  }

  private LongRing[] rings() {
    return new LongRing[] {times, values, pushedIn, sequences};
  }

  void add(Sample sample, long pushedInNm) {
    if (values.size() == MOST_SAMPLES) {
      for (LongRing ring : rings()) {
        ring.removeFirst();
      }
    }
    times.addLast(sample.monotonicNanos());
    values.addLast(sample.valueNm());
    pushedIn.addLast(pushedInNm);
    sequences.addLast(sample.sequence());
  }

  int size() {
    return values.size();
  }

  double seconds(int index) {
    return (times.get(index) - times.first()) / 1e9;
  }

  double valueNm(int index) {
    return (double) values.get(index);
  }

  double pushedInNm(int index) {
    return (double) pushedIn.get(index);
  }

  long firstSequence() {
    return sequences.first();
  }

  long lastSequence() {
    return sequences.last();
  }
}
