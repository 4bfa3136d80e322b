package org.chordlog.station;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.function.UnaryOperator;
import org.chordlog.capture.StreamDoubt;
import org.chordlog.measure.Incident;
import org.chordlog.measure.Reading;
import org.chordlog.measure.Sentence;
import org.chordlog.measure.Zero;
import org.jspecify.annotations.Nullable;

/**
 * What follows when the stream shows what can't be: an incident, a void zero, and readings taken
 * since then out of the statistics. Written by the station's thread alone.
 */
final class StreamGuard {
  private static final String BY = "stream watch";
  private static final int KEPT = 64;
  private static final int LOOK_BACK = 200;
  private static final Sentence VOID =
      Sentence.plain("The zero is void. Stand the bridge on the flat and set zero.");

  private record Given(long nanos, CompletableFuture<Reading> reading) {}

  private final String station;
  private final StationContext around;
  private final Deque<Given> given = new ArrayDeque<>();
  private volatile @Nullable StreamDoubt doubt;
  private volatile long zeroMovedMicros;

  StreamGuard(String station, StationContext around) {
    this.station = station;
    this.around = around;
    zeroMovedMicros = lastMoved();
  }

  /** From the incidents, so that a zero stays void over a restart. */
  private long lastMoved() {
    return around.store().incidents().ofStation(station, Long.MAX_VALUE, LOOK_BACK).stream()
        .filter(each -> each.kind() == Incident.Kind.ZERO_MOVED)
        .mapToLong(Incident::toMicros)
        .findFirst()
        .orElse(Long.MIN_VALUE);
  }

  void gave(long nanos, CompletableFuture<Reading> reading) {
    given.addLast(new Given(nanos, reading));
    if (given.size() > KEPT) {
      given.removeFirst();
    }
  }

  /** Readings were moved to another job: what is in doubt later are those there. */
  void moved(UnaryOperator<CompletableFuture<Reading>> there) {
    List<Given> now =
        given.stream().map(each -> new Given(each.nanos, there.apply(each.reading))).toList();
    given.clear();
    given.addAll(now);
  }

  void doubted(StreamDoubt newest, long nowMicros) {
    Incident.Kind kind = kind(newest.kind());
    if (kind == null) {
      doubt = null;
      return;
    }
    if (kind == Incident.Kind.ZERO_MOVED) {
      zeroMovedMicros = nowMicros;
    }
    note(newest, kind, nowMicros);
  }

  private void note(StreamDoubt newest, Incident.Kind kind, long nowMicros) {
    doubt = newest;
    String detail = newest.words().toString();
    around.incidents().add(new Incident(0, station, kind, nowMicros, nowMicros, 0, detail));
    if (kind != Incident.Kind.FROZEN) {
      exclude(newest);
    }
  }

  private void exclude(StreamDoubt newest) {
    Exclusions exclusions = new Exclusions(station, around);
    given.stream()
        .filter(each -> each.nanos > newest.sinceNanos())
        .forEach(each -> later(exclusions, each.reading, newest.sentence().toString()));
    given.clear();
  }

  /** On the incidents' thread: the store is written, which the station's thread never waits for. */
  private void later(Exclusions exclusions, CompletableFuture<Reading> reading, String reason) {
    around.incidents().run(() -> exclusions.add(reading.join(), true, reason, BY));
  }

  /** A reading that was none is taken out of the statistics. */
  void withdraw(CompletableFuture<Reading> reading, Sentence reason) {
    later(new Exclusions(station, around), reading, reason.toString());
  }

  /** What forbids readings now; null if nothing does. */
  @Nullable StreamDoubt forbidding() {
    StreamDoubt now = doubt;
    return now != null && now.kind().forbidsReadings() ? now : null;
  }

  boolean zeroMoved(@Nullable Zero zero) {
    return zero != null && zeroMovedMicros >= zero.takenAtMicros();
  }

  /** What is in doubt and what to do about it; null if nothing is. A new zero ends a moved one. */
  StationStatus.@Nullable InDoubt inDoubt(@Nullable Zero zero) {
    StreamDoubt now = doubt;
    if (now == null || (now.kind() == StreamDoubt.Kind.ZERO_MOVED && !zeroMoved(zero))) {
      return zeroMoved(zero) ? new StationStatus.InDoubt(Incident.Kind.ZERO_MOVED, VOID) : null;
    }
    Incident.Kind kind = kind(now.kind());
    return kind == null ? null : new StationStatus.InDoubt(kind, now.words());
  }

  private static Incident.@Nullable Kind kind(StreamDoubt.Kind doubted) {
    return switch (doubted) {
      case ZERO_MOVED -> Incident.Kind.ZERO_MOVED;
      case DIRECTION, UNIT -> Incident.Kind.SETTING_CHANGED;
      case FROZEN -> Incident.Kind.FROZEN;
      case RESTORED -> null;
    };
  }
}
