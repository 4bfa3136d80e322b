package org.chordlog.station;

import java.util.Map;
import org.chordlog.capture.CaptureOutcome;
import org.jspecify.annotations.Nullable;

/** A station as it stands: its link, its counters, and what it works on. */
public record StationStatus(
    String station,
    LinkState link,
    String message,
    String target,
    long samples,
    long damagedFrames,
    long readings,
    Map<CaptureOutcome.Reason, Long> rejections,
    @Nullable String indicatorState,
    @Nullable Long jobId,
    int piece,
    String position,
    @Nullable Long bridgeId,
    @Nullable Long zeroId,
    boolean zeroStale,
    long sinceMicros) {
  /** States of a link. */
  public enum LinkState {
    WAITING,
    OPEN,
    SILENT,
    LOST,
    STOPPED
  }

  public StationStatus {
    rejections = Map.copyOf(rejections);
  }
}
