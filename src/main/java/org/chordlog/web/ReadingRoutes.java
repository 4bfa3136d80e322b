package org.chordlog.web;

import java.util.List;
import org.chordlog.measure.Decision;
import org.chordlog.measure.Reading;
import org.chordlog.measure.SetUp;
import org.chordlog.store.ReadingQuery;
import org.chordlog.store.Store;
import org.chordlog.web.http.Call;
import org.chordlog.web.http.Page;
import org.chordlog.web.http.Refusal;
import org.chordlog.web.http.Route;
import org.chordlog.web.http.Times;

/** Readings: paged, singly, and what they were computed from. */
final class ReadingRoutes {
  static final int MOST = 1_000;
  private final Store store;

  ReadingRoutes(Store store) {
    this.store = store;
  }

  List<Route> routes() {
    return List.of(
        Route.get("/api/readings", "Readings of all stations, in the order of their commit")
            .query("after", "integer", "cursor: only readings with an id above it")
            .query("limit", "integer", "1 to " + MOST + ", 100 if left out")
            .answersPage(ReadingView.class, this::all),
        Route.get("/api/readings/{reading}", "A reading")
            .answers(ReadingView.class, call -> new ReadingViews(store).of(reading(call))),
        Route.get("/api/readings/{reading}/set-up", "What the reading was computed from")
            .answers(SetUpView.class, this::setUp),
        Route.get("/api/jobs/{job}/readings", "Readings of a job, the newest first")
            .query("after", "integer", "cursor: the last reading of the page before")
            .query("oldestFirst", "boolean", "true: ascending")
            .query("position", "string", "only at that position")
            .query("decision", "string", Call.names(Decision.class))
            .query("excluded", "boolean", "only those left out, or only those not")
            .query("from", "string", Times.FROM)
            .query("to", "string", Times.TO)
            .query("above", "integer", "only ids above it, as after an event")
            .query("upTo", "integer", "only ids up to it")
            .query("limit", "integer", "1 to " + MOST + ", 100 if left out")
            .answersPage(ReadingView.class, this::ofJob));
  }

  private Page<ReadingView> all(Call call) {
    int limit = limit(call);
    long after = call.query("after", 0, 0, Long.MAX_VALUE);
    return page(store.readings().all(after, limit), limit);
  }

  private Page<ReadingView> ofJob(Call call) {
    long job = JobRoutes.find(store.jobs(), call).id();
    int limit = limit(call);
    boolean oldest = call.flag("oldestFirst");
    ReadingQuery query =
        (oldest ? ReadingQuery.oldest(job, limit) : ReadingQuery.newest(job, limit))
            .at(call.ctx().queryParam("position"))
            .decided(call.choice("decision", Decision.class).orElse(null))
            .excluded(call.ctx().queryParam("excluded") == null ? null : call.flag("excluded"))
            .between(call.micros("from"), call.lastMicros("to"))
            .within(
                call.query("above", 0, 0, Long.MAX_VALUE),
                call.query("upTo", Long.MAX_VALUE, 0, Long.MAX_VALUE))
            .after(call.cursor("after"));
    return page(store.readings().search(query), limit);
  }

  private Page<ReadingView> page(List<Reading> readings, int limit) {
    return Page.of(new ReadingViews(store).of(readings), limit, ReadingView::id, view -> view);
  }

  private static int limit(Call call) {
    return (int) call.query("limit", 100, 1, MOST);
  }

  private Reading reading(Call call) {
    long id = call.id("reading");
    return store.readings().find(id).orElseThrow(() -> Refusal.notFound("reading", id));
  }

  private SetUpView setUp(Call call) {
    Reading reading = reading(call);
    SetUp setUp =
        store
            .readings()
            .setUp(reading.setUpId())
            .orElseThrow(() -> Refusal.notFound("set-up", reading.setUpId()));
    return SetUpView.of(reading.setUpId(), setUp);
  }
}
