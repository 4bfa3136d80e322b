package org.chordlog.station;

import java.util.EnumMap;
import java.util.Map;
import java.util.concurrent.atomic.AtomicLong;
import org.chordlog.capture.CaptureOutcome.Reason;

/** What a station counts; one thread writes most of them, any thread reads. */
final class Counters {
  final AtomicLong samples = new AtomicLong();
  final AtomicLong damagedFrames = new AtomicLong();
  final AtomicLong readings = new AtomicLong();
  final AtomicLong pendingReadings = new AtomicLong();
  final AtomicLong droppedReadings = new AtomicLong();
  final AtomicLong openings = new AtomicLong();
  private final Map<Reason, AtomicLong> rejections = new EnumMap<>(Reason.class);

  Counters() {
    for (Reason reason : Reason.values()) {
      rejections.put(reason, new AtomicLong());
    }
  }

  void rejected(Reason reason) {
    AtomicLong count = rejections.get(reason);
    if (count != null) {
      count.incrementAndGet();
    }
  }

  StationStatus.Counts snapshot(long droppedSamples) {
    Map<Reason, Long> refused = new EnumMap<>(Reason.class);
    rejections.forEach(
        (reason, count) -> {
          if (count.get() > 0) {
            refused.put(reason, count.get());
          }
        });
    return new StationStatus.Counts(
        samples.get(),
        damagedFrames.get(),
        readings.get(),
        pendingReadings.get(),
        droppedReadings.get(),
        droppedSamples,
        Math.max(0, openings.get() - 1),
        refused);
  }
}
