package org.chordlog.web;

import java.util.List;
import org.chordlog.measure.Change;
import org.chordlog.store.Changes;
import org.chordlog.web.http.Call;
import org.chordlog.web.http.Page;
import org.chordlog.web.http.Route;
import org.chordlog.web.http.Times;

/** The append-only record of changes. */
final class ChangeRoutes {
  private static final int MOST = 500;
  private final Changes changes;

  ChangeRoutes(Changes changes) {
    this.changes = changes;
  }

  /** Who changed what, when, from what to what, and why. */
  record ChangeView(
      long id, String at, String by, String what, String from, String to, String why) {
    static ChangeView of(Change c) {
      return new ChangeView(
          c.id(), Times.iso(c.atMicros()), c.by(), c.what(), c.from(), c.to(), c.why());
    }
  }

  List<Route> routes() {
    return List.of(
        Route.get("/api/changes", "Changes, the newest first")
            .query("before", "integer", "cursor: only changes with an id below it")
            .query("limit", "integer", "1 to " + MOST + ", 100 if left out")
            .answersPage(ChangeView.class, this::list));
  }

  private Page<ChangeView> list(Call call) {
    int limit = (int) call.query("limit", 100, 1, MOST);
    long before = call.query("before", Long.MAX_VALUE, 1, Long.MAX_VALUE);
    return Page.of(changes.list(before, limit), limit, Change::id, ChangeView::of);
  }
}
