package org.chordlog.measure;

/**
 * Something that happened to a station's stream between two wall times: a gap in it, a step of the
 * wall clock, samples that could not be stored. {@code count} is what was lost, 0 if not known.
 */
public record Incident(
    long id, String station, Kind kind, long fromMicros, long toMicros, long count, String detail) {
  public enum Kind {
    LINK_LOST,
    SILENT,
    CLOCK_STEPPED,
    SAMPLES_DROPPED,
    READINGS_DROPPED,
    UNIT_CHANGED,
    /** What the indicator shows in free air jumped: its zero was moved. */
    ZERO_MOVED,
    /** The indicator's counting direction or unit was changed. */
    SETTING_CHANGED,
    /** Not one step of change in free air, where it had changed before. */
    FROZEN,
    /** Bytes came, but nothing could be read. */
    UNREADABLE,
    /** Values came, but none of the channel that measures. */
    OTHER_CHANNEL,
    /** A piece was running through when the service ended. */
    PIECE_INTERRUPTED,
    /** The program did nothing meanwhile: it or its computer was stopped. */
    STOOD_STILL
  }

  public Incident {
    Check.text("station", station);
    Check.within("count", count, 0, Long.MAX_VALUE);
  }
}
