package org.chordlog.station;

import java.util.List;
import java.util.concurrent.CompletableFuture;
import org.chordlog.measure.Incident;
import org.chordlog.measure.PassedProfile;
import org.chordlog.measure.Reading;
import org.chordlog.store.PieceMove;
import org.chordlog.store.Readings;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Hands readings to the store and announces each after its commit, never before. The station's
 * thread appends; the thread that the store acknowledges commits on announces.
 */
final class ReadingLog {
  private static final Logger LOG = LoggerFactory.getLogger(ReadingLog.class);

  private final Readings readings;
  private final Announcer announcer;
  private final IncidentLog incidents;
  private final Counters counters;

  ReadingLog(StationContext around, Counters counters) {
    this.readings = around.store().readings();
    this.announcer = around.announcer();
    this.incidents = around.incidents();
    this.counters = counters;
  }

  /** The future is done, or failed, when the reading is announced or given up. */
  CompletableFuture<Reading> append(Reading reading, List<PassedProfile> profiles) {
    counters.pendingReadings.incrementAndGet();
    try {
      return readings
          .append(reading, profiles)
          .whenComplete((kept, failure) -> settled(reading, kept, failure));
    } catch (RuntimeException e) {
      settled(reading, null, e);
      return CompletableFuture.failedFuture(e);
    }
  }

  /** Readings that go to another job; the future is done, or failed, when they are announced. */
  CompletableFuture<List<Reading>> move(PieceMove move) {
    counters.pendingReadings.addAndGet(move.readings().size());
    return readings.move(move).whenComplete((kept, failure) -> moved(move, kept, failure));
  }

  private void moved(PieceMove asked, @Nullable List<Reading> kept, @Nullable Throwable failure) {
    counters.pendingReadings.addAndGet(-asked.readings().size());
    if (kept == null) {
      LOG.atError().setCause(failure).log("readings were not moved to another job");
    } else {
      kept.forEach(each -> announcer.announce(new Announcement.Taken(each.station(), each)));
    }
  }

  private void settled(Reading asked, @Nullable Reading kept, @Nullable Throwable failure) {
    counters.pendingReadings.decrementAndGet();
    if (kept == null) {
      counters.droppedReadings.incrementAndGet();
      lost(asked, failure);
      return;
    }
    counters.readings.incrementAndGet();
    announcer.announce(new Announcement.Taken(kept.station(), kept));
  }

  private void lost(Reading asked, @Nullable Throwable failure) {
    LOG.atError()
        .addKeyValue("station", asked.station())
        .addKeyValue("sequence", asked.stationSequence())
        .setCause(failure)
        .log("a reading is lost");
    Incident.Kind kind = Incident.Kind.READINGS_DROPPED;
    long at = asked.wallMicros();
    String detail = "The store could not keep it: " + failure;
    incidents.add(new Incident(0, asked.station(), kind, at, at, 1, detail));
  }
}
