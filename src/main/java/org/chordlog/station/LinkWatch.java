package org.chordlog.station;

import org.chordlog.link.LinkException;
import org.chordlog.station.StationStatus.LinkState;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * State of a station's link, and since when; logged once a change, not once an attempt. Changed by
 * the station's thread, read by any.
 */
final class LinkWatch {
  private static final Logger LOG = LoggerFactory.getLogger(LinkWatch.class);

  /** The state as a whole, so that it is read as a whole. */
  record Now(LinkState state, String message, long sinceMicros) {}

  private final String station;
  private volatile Now now;

  LinkWatch(String station, long nowMicros) {
    this.station = station;
    now = new Now(LinkState.WAITING, "Not opened yet.", nowMicros);
  }

  Now now() {
    return now;
  }

  /** True when it is another state, or the same for another reason. */
  boolean change(LinkState state, String message, long nowMicros) {
    Now before = now;
    if (before.state() == state && before.message().equals(message)) {
      return false;
    }
    long since = before.state() == state ? before.sinceMicros() : nowMicros;
    now = new Now(state, message, since);
    LOG.atInfo().addKeyValue("station", station).addKeyValue("link", state).log(message);
    return true;
  }

  /** State after an attempt that failed or a link that was lost. */
  static LinkState after(LinkException why, boolean wasOpen) {
    return switch (why.reason()) {
      case SILENT -> LinkState.SILENT;
      case ENDED -> LinkState.STOPPED;
      default -> wasOpen ? LinkState.LOST : LinkState.WAITING;
    };
  }
}
