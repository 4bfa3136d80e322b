package org.chordlog.web;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Set;
import org.chordlog.measure.Job;
import org.chordlog.measure.Reading;
import org.chordlog.station.StationSettings;
import org.chordlog.station.Stations;
import org.chordlog.store.ReadingQuery;
import org.chordlog.store.Store;
import org.chordlog.web.http.Call;
import org.chordlog.web.http.Route;

/** The last pieces of stations, for small charts. */
final class RecentRoutes {
  private static final int PIECES = 30;
  private static final int MOST_PIECES = 100;
  private static final int MOST_READINGS = 300;
  private final Stations stations;
  private final Store store;

  RecentRoutes(Stations stations, Store store) {
    this.stations = stations;
    this.store = store;
  }

  List<Route> routes() {
    return List.of(
        Route.get("/api/recent", "The last pieces of each station's job, readings that count")
            .query("station", "string", "only that station; may be repeated")
            .query("pieces", "integer", "1 to " + MOST_PIECES + ", " + PIECES + " if left out")
            .answersList(RecentView.class, this::recent));
  }

  private List<RecentView> recent(Call call) {
    Set<String> wanted = Set.copyOf(call.ctx().queryParams("station"));
    int pieces = (int) call.query("pieces", PIECES, 1, MOST_PIECES);
    return stations.settings().stream()
        .map(StationSettings::name)
        .filter(name -> wanted.isEmpty() || wanted.contains(name))
        .map(name -> recent(name, pieces))
        .toList();
  }

  private RecentView recent(String station, int pieces) {
    return store
        .jobs()
        .activeOn(station)
        .map(job -> recent(station, job, pieces))
        .orElseGet(() -> RecentView.nothing(station));
  }

  private RecentView recent(String station, Job job, int pieces) {
    int most = Math.min(MOST_READINGS, pieces * job.plan().positions().size());
    List<Reading> readings = new ArrayList<>(store.readings().search(counted(job.id(), most)));
    Collections.reverse(readings);
    return RecentView.of(
        station,
        job.id(),
        new ReadingViews(store).ofCounted(readings),
        RecordRoutes.ofJob(store, job));
  }

  /** The newest readings of a job that are not excluded. */
  static ReadingQuery counted(long jobId, int limit) {
    return ReadingQuery.newest(jobId, limit).excluded(false);
  }
}
