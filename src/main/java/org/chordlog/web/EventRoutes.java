package org.chordlog.web;

import java.util.List;
import java.util.Set;
import org.chordlog.measure.BadInput;
import org.chordlog.web.event.EventHub;
import org.chordlog.web.event.EventId;
import org.chordlog.web.event.Wanted;
import org.chordlog.web.http.Call;
import org.chordlog.web.http.Route;

/** The stream of events. */
final class EventRoutes {
  private static final int MOST_STATIONS = 64;
  private final EventHub hub;

  EventRoutes(EventHub hub) {
    this.hub = hub;
  }

  List<Route> routes() {
    return List.of(
        Route.get(
                "/api/events",
                "Server-sent events: hello, state, live, reading, refused, statistics, alerts, heartbeat."
                    + " A reading's event id is its id and the epoch that the id belongs to; send it"
                    + " back as Last-Event-ID to go on with the readings, and fetch all anew where"
                    + " hello says reload; what else happened meanwhile is not told again. live comes"
                    + " ten times a second at most, twice where the value stands between pieces")
            .query("station", "string", "only that station; may be repeated")
            .query("liveMillis", "integer", "least time between live values, 50 to 60000")
            .query("lastEventId", "string", "as the header Last-Event-ID")
            .query(Call.UNIT, "string", Route.UNIT_ASKED)
            .sends("text/event-stream", this::listen));
  }

  private void listen(Call call) {
    Set<String> stations = Set.copyOf(call.ctx().queryParams("station"));
    if (stations.size() > MOST_STATIONS) {
      throw new BadInput("station", stations.size(), "are too many", "at most " + MOST_STATIONS);
    }
    int liveMillis = (int) call.query("liveMillis", 100, 50, 60_000);
    Wanted wanted = new Wanted(stations, liveMillis, call.lengths());
    hub.serve(call.ctx(), wanted, last(call));
  }

  private static EventId last(Call call) {
    String header = call.ctx().header("Last-Event-ID");
    if (header != null && !header.isBlank()) {
      return EventId.read("Last-Event-ID", header);
    }
    return call.text("lastEventId")
        .filter(text -> !text.isBlank())
        .map(text -> EventId.read("lastEventId", text))
        .orElse(EventId.NONE);
  }
}
