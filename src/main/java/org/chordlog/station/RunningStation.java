package org.chordlog.station;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;
import org.chordlog.link.Backoff;
import org.chordlog.measure.Incident;

/** A station with its thread, and that of its length's link where it has one. */
record RunningStation(
    Station station,
    Mailbox mailbox,
    StationActions actions,
    MasterActions masters,
    List<LinkThread> threads) {
  static final long MOST_STOP_NANOS = 1_500_000_000L;

  RunningStation {
    threads = List.copyOf(threads);
  }

  static RunningStation start(
      StationSettings settings, StationContext around, Supplier<Backoff> backoff) {
    Station station = new Station(settings, around);
    Mailbox mailbox = new Mailbox(settings.name());
    LinkLoop loop =
        new LinkLoop(
            settings.link(),
            backoff.get(),
            mailbox,
            around.clock(),
            Math.round(settings.silenceSeconds() * 1e9),
            settings.polled() || settings.link().hasFootSwitch(),
            station.link());
    List<LinkThread> threads = new ArrayList<>();
    threads.add(LinkThread.start(loop, settings.name(), "station-" + settings.name()));
    LengthLink length = station.lengthLink();
    if (length != null) {
      threads.add(lengths(settings, around, backoff.get(), length));
    }
    StationActions actions = new StationActions(station, mailbox, around);
    MasterActions masters = new MasterActions(settings, actions, around);
    return new RunningStation(station, mailbox, actions, masters, threads);
  }

  private static LinkThread lengths(
      StationSettings settings, StationContext around, Backoff backoff, LengthLink length) {
    FeedSettings.CountLink of = length.settings();
    LinkLoop loop =
        new LinkLoop(
            of.link(),
            backoff,
            new Mailbox(settings.name()),
            around.clock(),
            Math.round(of.silenceSeconds() * 1e9),
            of.polled(),
            length);
    return LinkThread.start(loop, settings.name(), "length-" + settings.name());
  }

  /** The program did nothing between those wall times: the stream has a gap there. Any thread. */
  void stoodStill(long fromMicros, long toMicros, IncidentLog incidents) {
    var unused = mailbox.ask(station::missed);
    String detail =
        "Chordlog or its computer stood still for %s s; what the indicator sent meanwhile is lost or came late."
            .formatted(Math.round((toMicros - fromMicros) / 1e6));
    String name = station.settings().name();
    incidents.add(
        new Incident(0, name, Incident.Kind.STOOD_STILL, fromMicros, toMicros, 0, detail));
  }

  void stop() {
    threads.forEach(LinkThread::stop);
  }

  void awaitStop(long deadlineNanos) {
    threads.forEach(each -> each.awaitStop(deadlineNanos));
  }
}
