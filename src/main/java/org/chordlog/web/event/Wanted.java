package org.chordlog.web.event;

import java.util.Set;
import org.chordlog.measure.Lengths;

/**
 * What a listener asked for: its stations (none: all), the least time between two live values, and
 * the unit that sentences say lengths in.
 */
public record Wanted(Set<String> stations, int liveMillis, Lengths lengths) {
  public Wanted {
    stations = Set.copyOf(stations);
  }

  /** Whether it wants events of that station; an empty name concerns no station. */
  boolean has(String station) {
    return stations.isEmpty() || station.isEmpty() || stations.contains(station);
  }
}
