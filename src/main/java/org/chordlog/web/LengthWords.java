package org.chordlog.web;

import org.chordlog.measure.Decimals;
import org.chordlog.station.StationStatus;
import org.jspecify.annotations.Nullable;

/** Of a length that comes on a link of its own: how that is, in words. */
final class LengthWords {
  private LengthWords() {}

  static String link(StationStatus.LengthNow now) {
    if (now.link() != StationStatus.LinkState.OPEN) {
      return "No length: " + now.message();
    }
    return now.known()
        ? "Counts come from " + now.target() + "."
        : "No length: " + now.target() + " sends no counts.";
  }

  /** How much later depths come than their lengths, and what came of looking for it. */
  static String delay(StationStatus.DelayNow delay) {
    boolean found = delay.origin() == StationStatus.DelayOrigin.FOUND;
    return found || delay.said().isEmpty() ? now(delay) : now(delay) + " " + delay.said();
  }

  private static String now(StationStatus.DelayNow delay) {
    String ms = Decimals.fixed(delay.ms(), 1);
    return switch (delay.origin()) {
      case NOT_KNOWN ->
          "How much later depths come than their lengths is not known, and taken as 0.";
      case STATED -> "Depths come " + ms + " ms later than their lengths, as the settings say.";
      case FOUND ->
          "Depths come "
              + ms
              + uncertainty(delay.uncertaintyMs())
              + " ms later than their lengths, as was found.";
    };
  }

  private static String uncertainty(@Nullable Double ms) {
    return ms == null ? "" : " ± " + Decimals.fixed(ms, 1);
  }
}
