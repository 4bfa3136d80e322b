package org.chordlog.web;

import java.util.function.Consumer;
import org.chordlog.station.Announcement;
import org.chordlog.web.event.EventHub;
import org.chordlog.web.event.ServerEvent;

/** Sends what stations announce to the event hub; returns at once. */
final class Announcements implements Consumer<Announcement>, Announcement.Hearer {
  private final EventHub hub;

  Announcements(EventHub hub) {
    this.hub = hub;
  }

  /** A job's statistics have changed, or the job itself. */
  record StatisticsChanged(long jobId) {}

  @Override
  public void accept(Announcement announcement) {
    announcement.tell(this);
  }

  @Override
  public void live(Announcement.Live live) {
    hub.replace(ServerEvent.of("live", live.station(), () -> LiveView.of(live)));
  }

  @Override
  public void state(Announcement.State state) {
    hub.replace(event(state));
  }

  @Override
  public void taken(Announcement.Taken taken) {
    hub.readingsCommitted(statistics(taken.station(), taken.reading().jobId()));
  }

  @Override
  public void refused(Announcement.Refused refused) {
    hub.notice(ServerEvent.of("refused", refused.station(), () -> RefusalView.of(refused)));
  }

  @Override
  public void excluded(Announcement.Excluded excluded) {
    hub.replace(statistics(excluded.station(), excluded.jobId()));
  }

  @Override
  public void happened(Announcement.Happened happened) {
    hub.notice(
        ServerEvent.of("happened", happened.station(), () -> JobEventView.of(happened.event())));
    hub.replace(statistics(happened.station(), happened.event().jobId()));
  }

  @Override
  public void zeroed(Announcement.Zeroed zeroed) {
    hub.notice(
        ServerEvent.of(
            "zeroed", zeroed.station(), () -> ZeroView.of(zeroed.zero(), zeroed.doubt())));
  }

  static ServerEvent event(Announcement.State state) {
    return ServerEvent.of("state", state.station(), () -> StationView.of(state.status()));
  }

  static ServerEvent statistics(String station, long jobId) {
    return ServerEvent.of("statistics", station, () -> new StatisticsChanged(jobId));
  }
}
