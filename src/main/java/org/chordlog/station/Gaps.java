package org.chordlog.station;

import org.chordlog.link.LinkException;
import org.chordlog.link.LinkException.Reason;
import org.chordlog.measure.Incident;
import org.jspecify.annotations.Nullable;

/**
 * The gap in a station's stream, from the loss of its link until it is open again. Used by the
 * station's thread alone.
 */
final class Gaps {
  private final String station;
  private final IncidentLog incidents;
  private final String before;
  private final long silenceMicros;
  private @Nullable LinkException why;
  private long fromMicros;

  /**
   * @param before comes before each detail
   * @param silenceSeconds after so long without a byte a link is told to be silent
   */
  Gaps(String station, IncidentLog incidents, String before, double silenceSeconds) {
    this.station = station;
    this.before = before;
    this.incidents = incidents;
    silenceMicros = Math.round(silenceSeconds * 1e6);
  }

  void lost(LinkException reason, long nowMicros) {
    if (reason.reason() == Reason.ENDED) {
      return;
    }
    boolean silent = reason.reason() == Reason.SILENT;
    boolean lasts = why != null && why.reason() == Reason.SILENT;
    if (!silent || !lasts) {
      fromMicros = silent ? nowMicros - silenceMicros : nowMicros;
    }
    why = reason;
  }

  /** The link is open again, or the station stops. */
  void end(long nowMicros) {
    @Nullable LinkException cause = why;
    if (cause == null) {
      return;
    }
    why = null;
    Incident.Kind kind =
        cause.reason() == Reason.SILENT ? Incident.Kind.SILENT : Incident.Kind.LINK_LOST;
    incidents.add(
        new Incident(0, station, kind, fromMicros, nowMicros, 0, before + cause.getMessage()));
  }
}
