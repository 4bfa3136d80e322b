package org.chordlog.web;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.chordlog.measure.Bridge;
import org.chordlog.measure.Calibration;
import org.chordlog.measure.Reading;
import org.chordlog.radius.Doubt;
import org.chordlog.station.Stations;
import org.chordlog.store.Gauges;
import org.chordlog.store.Store;
import org.chordlog.web.http.Call;
import org.chordlog.web.http.Page;
import org.chordlog.web.http.Route;
import org.chordlog.web.http.Times;
import org.jspecify.annotations.Nullable;

/** Readings that a failed interim check casts doubt on. */
final class DoubtRoutes {
  private static final int MOST_CHECKS = 100_000;
  private final Store store;
  private final Stations stations;

  DoubtRoutes(Store store, Stations stations) {
    this.store = store;
    this.stations = stations;
  }

  /** A time in which readings are in doubt; both ends are excluded. */
  record DoubtView(
      @JsonPropertyDescription("the last check passed or calibration; null: none before")
          @Nullable String after,
      @JsonPropertyDescription("the next check passed or calibration; null: none since")
          @Nullable String before) {
    static DoubtView of(Doubt doubt) {
      long after = doubt.afterMicros();
      long before = doubt.beforeMicros();
      return new DoubtView(
          after == Long.MIN_VALUE ? null : Times.iso(after),
          before == Long.MAX_VALUE ? null : Times.iso(before));
    }
  }

  List<Route> routes() {
    String bridge = "the one mounted, if left out";
    return List.of(
        Route.get("/api/stations/{station}/doubts", "Times in which a failed check casts doubt on")
            .query("bridge", "integer", bridge)
            .answersList(
                DoubtView.class, call -> doubts(call).stream().map(DoubtView::of).toList()),
        Route.get("/api/stations/{station}/readings-in-doubt", "Readings taken in those times")
            .query("bridge", "integer", bridge)
            .query("after", "integer", "cursor: only readings with an id above it")
            .query("limit", "integer", "1 to " + ReadingRoutes.MOST + ", 100 if left out")
            .answersPage(ReadingView.class, this::readings));
  }

  private List<Doubt> doubts(Call call) {
    String station = StationRoutes.known(stations, call);
    long bridge = bridge(call, station);
    Gauges gauges = store.gauges();
    List<Calibration> calibrations =
        gauges.calibrations(MOST_CHECKS).stream()
            .filter(each -> each.station().equals(station) && each.bridgeId() == bridge)
            .toList();
    return Doubt.of(gauges.checks(station, bridge, MOST_CHECKS), calibrations);
  }

  private long bridge(Call call, String station) {
    long mounted = store.gauges().mountedOn(station).map(Bridge::id).orElse(0L);
    return call.query("bridge", mounted, 0, Long.MAX_VALUE);
  }

  private Page<ReadingView> readings(Call call) {
    String station = StationRoutes.known(stations, call);
    long bridge = bridge(call, station);
    long after = call.query("after", 0, 0, Long.MAX_VALUE);
    int limit = (int) call.query("limit", 100, 1, ReadingRoutes.MOST);
    List<Reading> found = new ArrayList<>();
    for (Doubt doubt : doubts(call)) {
      found.addAll(
          store
              .readings()
              .ofBridge(station, bridge, doubt.afterMicros(), doubt.beforeMicros(), after, limit));
    }
    found.sort(Comparator.comparingLong(Reading::id));
    List<Reading> page = found.subList(0, Math.min(limit, found.size()));
    return Page.of(new ReadingViews(store).of(page), limit, ReadingView::id, view -> view);
  }
}
