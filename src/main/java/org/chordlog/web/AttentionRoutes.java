package org.chordlog.web;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Job;
import org.chordlog.measure.Reading;
import org.chordlog.monitor.Monitor;
import org.chordlog.store.JobQuery;
import org.chordlog.store.Store;
import org.chordlog.store.StoreException;
import org.chordlog.store.UnreadableRecord;
import org.chordlog.web.http.Call;
import org.chordlog.web.http.Route;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Which open jobs need attention. */
final class AttentionRoutes {
  private static final int JOBS = 50;
  private static final Logger LOG = LoggerFactory.getLogger(AttentionRoutes.class);
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
    return found((int) call.query("limit", JOBS, 1, JOBS));
  }

  /** Of so many of the newest open jobs, the most pressing first. */
  List<Attention> found(int limit) {
    JobQuery open = JobQuery.of(JobQuery.Order.NEWEST, limit).in(Job.State.OPEN);
    List<Attention> jobs = store.jobs().search(open).stream().map(this::judged).toList();
    List<UnreadableRecord> damaged = store.unreadable(); // after the search, which may meet some
    Stream<Attention> lost =
        damaged.stream().filter(each -> each.what().equals("job")).map(Attention::lost);
    return Stream.concat(lost, jobs.stream().map(each -> each.with(damaged)))
        .filter(each -> each.weight() > 0)
        .sorted(Comparator.comparingInt(Attention::weight).reversed())
        .toList();
  }

  /** A job whose statistics can't be made is one to look at; the others are judged all the same. */
  private Attention judged(Job job) {
    try {
      return of(job);
    } catch (BadInput | StoreException | IllegalStateException e) {
      LOG.atWarn().addKeyValue("job", job.id()).setCause(e).log("a job can't be judged");
      return Attention.notJudged(job, String.valueOf(e.getMessage()));
    }
  }

  private Attention of(Job job) {
    List<Reading> counted = store.readings().search(RecentRoutes.counted(job.id(), 1));
    Optional<ReadingView> newest = new ReadingViews(store).ofCounted(counted).stream().findFirst();
    return monitor.read(job.id(), statistics -> Attention.of(job, newest, statistics));
  }
}
