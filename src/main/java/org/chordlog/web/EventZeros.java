package org.chordlog.web;

import java.util.List;
import java.util.LongSummaryStatistics;
import java.util.Map;
import java.util.NavigableMap;
import java.util.TreeMap;
import org.chordlog.measure.JobEvent;
import org.chordlog.measure.Length;
import org.chordlog.store.Gauges;
import org.jspecify.annotations.Nullable;

/** The zeros that events of a job tell of: such an event is recorded right after its zero. */
record EventZeros(NavigableMap<Long, Long> nmByMicros) {
  /** Longer than the store may take for the zero, which comes first. */
  private static final long SOON_MICROS = 60_000_000;

  static EventZeros none() {
    return new EventZeros(new TreeMap<>());
  }

  static EventZeros of(Gauges gauges, String station, List<JobEvent> events) {
    LongSummaryStatistics times =
        events.stream()
            .filter(each -> each.kind() == JobEvent.Kind.ZERO)
            .mapToLong(JobEvent::atMicros)
            .summaryStatistics();
    EventZeros found = none();
    if (times.getCount() > 0) {
      gauges
          .zeros(station, times.getMin() - SOON_MICROS, times.getMax())
          .forEach(each -> found.nmByMicros.put(each.takenAtMicros(), each.valueNm()));
    }
    return found;
  }

  /** The indicator's value on the flat; null for another event, or where the zero is not found. */
  @Nullable Double valueMm(JobEvent event) {
    Map.@Nullable Entry<Long, Long> last = nmByMicros.floorEntry(event.atMicros());
    if (event.kind() != JobEvent.Kind.ZERO || last == null) {
      return null;
    }
    boolean its = last.getKey() >= event.atMicros() - SOON_MICROS;
    return its ? (Double) Length.mm(last.getValue()) : null;
  }
}
