package org.chordlog.measure;

/**
 * Something that happened to a station's stream between two wall times: a gap in it, a step of the
 * wall clock, samples that could not be kept. {@code count} is what was lost, 0 if not known.
 */
public record Incident(
    long id, String station, Kind kind, long fromMicros, long toMicros, long count, String detail) {
  public enum Kind {
    LINK_LOST,
    SILENT,
    CLOCK_STEPPED,
    SAMPLES_DROPPED,
    READINGS_DROPPED,
    UNIT_CHANGED
  }

  public Incident {
    Check.text("station", station);
    Check.within("count", count, 0, Long.MAX_VALUE);
  }
}
