package org.chordlog.web;

import java.util.function.Consumer;
import org.chordlog.station.Announcement;
import org.chordlog.web.event.EventHub;
import org.chordlog.web.event.ServerEvent;

/** What stations announce, as events; returns at once. */
final class Announcements implements Consumer<Announcement> {
  private final EventHub hub;

  Announcements(EventHub hub) {
    this.hub = hub;
  }

  /** A job's statistics have changed. */
  record StatisticsChanged(long jobId) {}

  @Override
  public void accept(Announcement announcement) {
    String station = announcement.station();
    if (announcement instanceof Announcement.Live live) {
      hub.replace(ServerEvent.of("live", station, () -> LiveView.of(live)));
    } else if (announcement instanceof Announcement.State state) {
      hub.replace(state(state));
    } else if (announcement instanceof Announcement.Refused refused) {
      hub.notice(ServerEvent.of("refused", station, () -> RefusalView.of(refused)));
    } else if (announcement instanceof Announcement.Taken taken) {
      hub.readingsCommitted(statistics(station, taken.reading().jobId()));
    } else if (announcement instanceof Announcement.Excluded excluded) {
      hub.replace(statistics(station, excluded.jobId()));
    } else if (announcement instanceof Announcement.Happened happened) {
      hub.notice(ServerEvent.of("happened", station, () -> JobEventView.of(happened.event())));
      hub.replace(statistics(station, happened.event().jobId()));
    } else if (announcement instanceof Announcement.Zeroed zeroed) {
      hub.notice(ServerEvent.of("zeroed", station, () -> ZeroView.of(zeroed.zero())));
    }
  }

  static ServerEvent state(Announcement.State state) {
    return ServerEvent.of("state", state.station(), () -> StationView.of(state.status()));
  }

  private static ServerEvent statistics(String station, long jobId) {
    return ServerEvent.of("statistics", station, () -> new StatisticsChanged(jobId));
  }
}
