package org.chordlog.notify;

import java.util.List;
import java.util.Map;
import org.chordlog.notify.rule.Found;
import org.chordlog.notify.rule.ServiceFacts;
import org.chordlog.notify.rule.ServiceRule;
import org.chordlog.notify.rule.Steadied;
import org.chordlog.station.StationStatus;
import org.chordlog.store.StoreHealth;

/** Looks at the store, the disk, the certificate and the backups; the watch's thread only. */
final class ServiceRound implements Round {
  private static final String UNWRITABLE = "The store can't be written.";

  private final Watched watched;
  private final AlertBook book;
  private final Steadied delays = new Steadied();
  private long lostBefore;

  /** A fault that could not be stored while it lasted, and is told when the store writes again. */
  private String untold = "";

  ServiceRound(Watched watched, AlertBook book) {
    this.watched = watched;
    this.book = book;
  }

  @Override
  public void run(long atMicros) {
    StoreHealth health = watched.store().health();
    long lost = lost(health);
    String fault = health.fault();
    untold = !fault.isEmpty() ? fault : health.writable() ? untold : UNWRITABLE;
    ServiceFacts facts = facts(health, lost - lostBefore);
    List<Found> found = ServiceRule.found(facts, atMicros);
    Steadied.Result result =
        delays.take(ServiceRule.judged(facts), found, book.alerts().open(), atMicros);
    book.tell(result.appeared(), result.gone(), Map.of(), atMicros);
    lostBefore = lost;
    untold = "";
  }

  /** Since the start: refused by the store, or given up by a station. */
  private long lost(StoreHealth health) {
    long atStations =
        watched.stations().get().stream()
            .map(StationStatus::counts)
            .mapToLong(StationStatus.Counts::droppedReadings)
            .sum();
    return Math.max(health.counts().droppedReadings(), atStations);
  }

  private ServiceFacts facts(StoreHealth health, long lost) {
    Watched.Outside outside = watched.outside();
    return new ServiceFacts(
        untold,
        lost,
        outside.alteredRecords().get(),
        health.space().freeBytes(),
        outside.backupMicros().get(),
        outside.certificateDaysLeft().get());
  }
}
