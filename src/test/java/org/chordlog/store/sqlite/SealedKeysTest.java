package org.chordlog.store.sqlite;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import java.util.HashSet;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;

final class SealedKeysTest {
  private static final ThreadMXBean THREADS = (ThreadMXBean) ManagementFactory.getThreadMXBean();

  private final SealedKeys keys = new SealedKeys();

  @Test
  void eachKeyIsThereOnce() {
    Random random = new Random(7);
    Set<Long> expected = new HashSet<>(Set.of(0L, -1L, Long.MIN_VALUE, Long.MAX_VALUE));
    expected.forEach(keys::add);
    for (int i = 0; i < 20_000; i++) {
      long key = random.nextLong() >> random.nextInt(64);
      assertTrue(keys.add(key) == expected.add(key), () -> "key " + key);
    }
    assertTrue(expected.stream().allMatch(keys::contains));
    assertTrue(expected.stream().noneMatch(keys::add));
    assertTrue(random.longs(20_000).allMatch(key -> keys.contains(key) == expected.contains(key)));
  }

  @Test
  void revisionsOfManyJobsTakeLittleMemory() {
    long before = THREADS.getThreadAllocatedBytes(Thread.currentThread().getId());
    for (long job = 1; job <= 2_000; job++) {
      assertTrue(keys.add(job * 1_000_000 + 1));
    }
    long bytes = THREADS.getThreadAllocatedBytes(Thread.currentThread().getId()) - before;
    assertTrue(bytes < 2_000_000, () -> bytes + " bytes for 2,000 keys");
    assertFalse(keys.contains(1_000_002));
  }

  @Test
  void idsTakeABitEach() {
    long before = THREADS.getThreadAllocatedBytes(Thread.currentThread().getId());
    for (long id = 1; id <= 1_000_000; id++) {
      keys.add(id);
    }
    long bytes = THREADS.getThreadAllocatedBytes(Thread.currentThread().getId()) - before;
    assertTrue(bytes < 2_000_000, () -> bytes + " bytes for 1,000,000 keys");
  }
}
