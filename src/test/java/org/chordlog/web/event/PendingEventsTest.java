package org.chordlog.web.event;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** When the newest value of a station goes out; times in milliseconds. */
final class PendingEventsTest {
  private static final long MILLI = 1_000_000;

  private final List<Long> sentAt = new ArrayList<>();
  private final List<Long> age = new ArrayList<>();

  @Test
  void valuesAsOftenAsAskedForGoOutAtOnce() {
    play(100, 0, 100, 200, 300, 410, 520);
    assertEquals(List.of(0L, 100L, 200L, 300L, 410L, 520L), sentAt);
    assertEquals(List.of(0L, 0L, 0L, 0L, 0L, 0L), age);
  }

  /** As after a pause of the whole program: what follows is not late for ever. */
  @Test
  void oneLateValueMakesNoOtherLate() {
    play(100, 0, 190, 200, 300, 400, 500);
    assertEquals(List.of(0L, 190L, 300L, 400L, 500L), sentAt);
    assertEquals(List.of(0L, 0L, 0L, 0L, 0L), age);
  }

  @Test
  void ofMoreThanAskedForFreshOnesAreChosen() {
    play(200, 0, 100, 200, 300, 410, 520, 630);
    assertEquals(List.of(0L, 200L, 410L, 630L), sentAt);
    assertEquals(List.of(0L, 0L, 0L, 0L), age);
  }

  @Test
  void theLastBeforeAPauseIsSentToo() {
    PendingEvents newest = new PendingEvents(200 * MILLI);
    newest.offer(value(), 0);
    assertTrue(newest.take(new ArrayList<>(), 0));
    newest.offer(value(), 100 * MILLI);
    assertFalse(newest.take(new ArrayList<>(), 229 * MILLI));
    assertEquals(230 * MILLI, newest.firstDueNanos(0));
    assertTrue(newest.take(new ArrayList<>(), 230 * MILLI));
    assertTrue(newest.isEmpty());
  }

  /** Offers a value at each time and looks each millisecond. */
  private void play(long leastMillis, long... times) {
    PendingEvents newest = new PendingEvents(leastMillis * MILLI);
    int next = 0;
    long came = 0;
    for (long now = 0; now <= times[times.length - 1]; now++) {
      if (now == times[next]) {
        newest.offer(value(), now * MILLI);
        came = now;
        next++;
      }
      if (newest.take(new ArrayList<>(), now * MILLI)) {
        sentAt.add(now);
        age.add(now - came);
      }
    }
  }

  private static ServerEvent value() {
    return ServerEvent.of("live", "A", Map::of);
  }
}
