package org.chordlog.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.chordlog.measure.Reading;
import org.chordlog.measure.Sample;
import org.junit.jupiter.api.Test;

/** Raw samples. */
public abstract class TracesContract extends StoreContract {
  protected TracesContract(Opener opener) {
    super(opener);
  }

  private final List<Sample> samples = new ArrayList<>();

  private void append() {
    for (int i = 1; i <= 300; i++) {
      long value = i % 60 * 10_000L;
      samples.add(
          new Sample(i, i * 50_000_000L, Some.T0 + i * 50_000L, value, i % 2, i % 100 == 0));
    }
    assertTrue(store.traces().append("A", samples));
    reopen();
  }

  @Test
  void samplesComeBackByTheirSequence() {
    append();
    assertEquals(samples.subList(99, 200), store.traces().range("A", 100, 200, 1_000));
    assertEquals(samples.subList(99, 104), store.traces().range("A", 100, 200, 5));
    assertEquals(List.of(), store.traces().range("B", 1, 300, 1_000));
    assertEquals(300, store.traces().lastSequence("A"));
    assertEquals(0, store.traces().lastSequence("B"));
  }

  @Test
  void whatIsOlderThanATimeIsRemoved() {
    append();
    assertEquals(0, store.traces().prune(Some.T0));
    assertTrue(store.traces().prune(Some.T0 * 2) > 0);
    assertEquals(List.of(), store.traces().range("A", 1, 300, 1_000));
  }

  /** Otherwise a restart would give new samples the numbers of those that a reading names. */
  @Test
  void samplesAreNumberedAboveThoseThatAReadingNames() {
    Reading kept = store.readings().append(Kept.first(store)).join();
    assertEquals(kept.captured().lastSequence(), store.traces().lastSequence("A"));
  }
}
