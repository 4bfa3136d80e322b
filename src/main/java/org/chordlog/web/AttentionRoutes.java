package org.chordlog.web;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.chordlog.measure.Job;
import org.chordlog.measure.Reading;
import org.chordlog.monitor.Monitor;
import org.chordlog.store.JobQuery;
import org.chordlog.store.Store;
import org.chordlog.web.http.Call;
import org.chordlog.web.http.Route;

/** Which open jobs need attention. */
final class AttentionRoutes {
  private static final int JOBS = 50;
  private final Store store;
  private final Monitor monitor;

  AttentionRoutes(Store store, Monitor monitor) {
    this.store = store;
    this.monitor = monitor;
  }

  List<Route> routes() {
    return List.of(
        Route.get("/api/attention", "Open jobs that need attention, the most pressing first")
            .query("limit", "integer", "open jobs looked at, the newest, 1 to " + JOBS)
            .answersList(Attention.class, this::list));
  }

  private List<Attention> list(Call call) {
    int limit = (int) call.query("limit", JOBS, 1, JOBS);
    JobQuery open = JobQuery.of(JobQuery.Order.NEWEST, limit).in(Job.State.OPEN);
    return store.jobs().search(open).stream()
        .map(this::of)
        .filter(each -> each.weight() > 0)
        .sorted(Comparator.comparingInt(Attention::weight).reversed())
        .toList();
  }

  private Attention of(Job job) {
    List<Reading> counted = store.readings().search(RecentRoutes.counted(job.id(), 1));
    Optional<ReadingView> newest = new ReadingViews(store).ofCounted(counted).stream().findFirst();
    return monitor.read(job.id(), statistics -> Attention.of(job, newest, statistics));
  }
}
