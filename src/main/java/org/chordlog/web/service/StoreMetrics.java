package org.chordlog.web.service;

import io.prometheus.metrics.model.snapshots.Unit;
import java.util.function.Supplier;
import java.util.function.ToDoubleFunction;
import org.chordlog.store.StoreHealth;
import org.jspecify.annotations.Nullable;

/** How the store is: its queue, its commits, its room. */
record StoreMetrics(Unlabelled unlabelled, Supplier<StoreHealth> store) {
  private static final double MILLIS = 1_000;

  void register() {
    gauge(
        "chordlog_store_writable",
        "1 while readings can be kept.",
        null,
        h -> h.writable() ? 1 : 0);
    gauge("chordlog_store_queue_depth", "Commands that wait.", null, h -> h.queue().waiting());
    gauge("chordlog_store_queue_capacity", "Room for them.", null, h -> h.queue().capacity());
    gauge(
        "chordlog_store_commit_p95_seconds",
        "95th percentile of the newest commits.",
        Unit.SECONDS,
        h -> h.commits().millisP95() / MILLIS);
    gauge("chordlog_database_bytes", "Database file.", Unit.BYTES, h -> h.space().dataBytes());
    gauge("chordlog_free_space_bytes", "Free on the disk.", Unit.BYTES, h -> h.space().freeBytes());
    gauge("chordlog_database_wal_bytes", "Write-ahead log.", Unit.BYTES, h -> h.space().logBytes());
  }

  private void gauge(
      String name, String help, @Nullable Unit unit, ToDoubleFunction<StoreHealth> value) {
    unlabelled.gauge(name, help, unit, () -> value.applyAsDouble(store.get()));
  }
}
