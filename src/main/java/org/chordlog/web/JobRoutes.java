package org.chordlog.web;

import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.chordlog.account.Right;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Job;
import org.chordlog.measure.Sentence;
import org.chordlog.measure.Stale;
import org.chordlog.station.Stations;
import org.chordlog.store.JobQuery;
import org.chordlog.store.Jobs;
import org.chordlog.store.Store;
import org.chordlog.web.event.ServerEvent;
import org.chordlog.web.http.Call;
import org.chordlog.web.http.Page;
import org.chordlog.web.http.Refusal;
import org.chordlog.web.http.Route;
import org.chordlog.web.http.Times;
import org.jspecify.annotations.Nullable;

/** Jobs: listed, opened, changed, duplicated, closed and reopened. */
final class JobRoutes {
  static final int MOST = 200;
  private final Store store;
  private final Clock clock;
  private final Consumer<ServerEvent> tell;
  private final Stations stations;

  /** {@code tell} sends an event to all pages. */
  JobRoutes(Store store, Stations stations, Clock clock, Consumer<ServerEvent> tell) {
    this.store = store;
    this.stations = stations;
    this.clock = clock;
    this.tell = tell;
  }

  /** Why something is done; stored in the record of changes. */
  record Why(@Nullable String why) {
    String needed() {
      if (why == null || why.isBlank()) {
        throw new BadInput("why", "", "is missing", "a reason");
      }
      return why.strip();
    }

    String orEmpty() {
      return why == null ? "" : why.strip();
    }
  }

  List<Route> routes() {
    return List.of(
        Route.get("/api/jobs", "Jobs, searched and sorted")
            .query("after", "integer", "cursor: the last job of the page before")
            .query("machine", "string", "only of that machine")
            .query("state", "string", Call.names(Job.State.class))
            .query("text", "string", "in name, part or lot")
            .query("order", "string", Call.names(JobQuery.Order.class) + "; newest if left out")
            .query("limit", "integer", "1 to " + MOST + ", 50 if left out")
            .answersPage(JobView.class, this::list),
        Route.post(Right.JOB, "/api/jobs", "Opens a job")
            .body(JobForm.class)
            .creates(JobView.class, this::add),
        Route.get("/api/jobs/{job}", "A job").answers(JobView.class, this::shown),
        Route.put(
                Right.JOB,
                "/api/jobs/{job}",
                "Changes a job; the reason is recorded. With If-Match: its version or ETag, 412 and"
                    + " the present state when it was changed since")
            .body(JobForm.class)
            .answers(JobView.class, this::change),
        Route.get("/api/jobs/{job}/revisions", "Revisions of a job's specification, in order")
            .answersList(RevisionView.class, this::revisions),
        Route.get("/api/jobs/{job}/history", "Everything that was changed in a job, newest first")
            .answersList(JobHistory.Line.class, call -> JobHistory.of(store, job(call))),
        Route.post(
                Right.JOB,
                "/api/jobs/{job}/duplicate",
                "Opens a copy of a job, under a new name if given")
            .body(Copy.class)
            .creates(JobView.class, this::duplicate),
        Route.post(Right.JUDGE, "/api/jobs/{job}/close", "Closes a job")
            .body(Why.class)
            .answers(JobView.class, call -> state(call, Job.State.CLOSED)),
        Route.post(Right.JUDGE, "/api/jobs/{job}/reopen", "Opens a closed job again")
            .body(Why.class)
            .answers(JobView.class, call -> state(call, Job.State.OPEN)));
  }

  /** What differs in a copy of a job; what is left out stays as in the original. */
  record Copy(@Nullable String name, @Nullable String materialLot) {}

  private List<RevisionView> revisions(Call call) {
    return store.jobs().revisions(job(call).id()).stream().map(RevisionView::of).toList();
  }

  private Page<JobView> list(Call call) {
    int limit = (int) call.query("limit", 50, 1, MOST);
    JobQuery query =
        JobQuery.of(call.choice("order", JobQuery.Order.class).orElse(JobQuery.Order.NEWEST), limit)
            .onMachine(call.ctx().queryParam("machine"))
            .in(call.choice("state", Job.State.class).orElse(null))
            .containing(call.ctx().queryParam("text"))
            .after(call.cursor("after"));
    return Page.of(store.jobs().search(query), limit, Job::id, this::view);
  }

  private JobView add(Call call) {
    JobForm form = call.body(JobForm.class);
    Job job = form.job(0, Job.State.OPEN, nowMicros(), jobStations(null));
    refuseNamesake(form, job);
    return view(store.jobs().add(job, call.by()));
  }

  /** Only who wants to be asked is. */
  private void refuseNamesake(JobForm form, Job job) {
    Sentence other =
        form.asksForNamesakes()
            ? new Namesakes(store.jobs()).of(job.name(), job.id())
            : Sentence.EMPTY;
    if (!other.isEmpty()) {
      throw Refusal.sameName(other);
    }
  }

  private JobView shown(Call call) {
    JobView view = view(job(call));
    call.unlessKnown(JobVersion.tag(view));
    return view;
  }

  /** The job, where it is as the caller knows it. */
  private Job meant(Call call) {
    Job job = job(call);
    if (!call.means(JobVersion.of(job))) {
      throw changedMeanwhile(job);
    }
    return job;
  }

  private Refusal changedMeanwhile(Job job) {
    return Refusal.changedMeanwhile(
        "Job " + job.id() + " was changed meanwhile. Look at what it is now, then change it.",
        view(job));
  }

  /** Also where two arrive at the same moment, only one of them changes the job. */
  private Job update(Call call, Job changed, Job old, String why) {
    try {
      return store.jobs().update(changed, old, call.by(), why);
    } catch (Stale e) {
      throw changedMeanwhile(job(call));
    }
  }

  private JobView change(Call call) {
    Job old = meant(call);
    JobForm form = call.body(JobForm.class);
    String why = new Why(form.why()).needed();
    refuseClosed(old);
    Job changed =
        form.job(old.id(), old.state(), old.openedAtMicros(), jobStations(old.machine()))
            .withDetails(old.details());
    refuseMoved(old, changed);
    if (!changed.name().equals(old.name())) {
      refuseNamesake(form, changed);
    }
    Job whole = form.details() == null ? changed.withDetails(old.details()) : changed;
    Job kept = update(call, whole, old, why);
    announce(kept);
    return view(kept);
  }

  private static void refuseClosed(Job job) {
    if (job.state() == Job.State.CLOSED) {
      throw Refusal.conflict("Job " + job.id() + " is closed; reopen it first.");
    }
  }

  /** The readings of a station must not go to a job that names another one. */
  private void refuseMoved(Job old, Job changed) {
    boolean active =
        store.jobs().activeOn(old.station()).filter(a -> a.id() == old.id()).isPresent();
    if (active && !changed.station().equals(old.station())) {
      throw Refusal.conflict(
          "Job "
              + old.id()
              + " is in work on "
              + old.station()
              + "; choose another job there first.");
    }
  }

  /**
   * Pages show the job's target, limits and state, which the state of its station does not have.
   */
  private void announce(Job job) {
    if (stations.settings().stream().anyMatch(each -> each.name().equals(job.station()))) {
      stations.at(job.station()).refresh();
    }
    tell.accept(Announcements.statistics(job.station(), job.id()));
  }

  private JobView duplicate(Call call) {
    Job old = job(call);
    Copy copy = call.body(Copy.class);
    String name = copy.name() == null ? old.name() : copy.name();
    String lot = copy.materialLot() == null ? old.materialLot() : copy.materialLot();
    Job made = copy(old, name, lot, nowMicros());
    return view(store.jobs().add(made, call.by()));
  }

  private JobView state(Call call, Job.State state) {
    Job old = meant(call);
    if (old.state() == state) {
      throw Refusal.conflict("The job is " + (state == Job.State.OPEN ? "open" : "closed") + ".");
    }
    String why = call.body(Why.class).orEmpty();
    Job made = update(call, old.withState(state), old, why);
    announce(made);
    return view(made);
  }

  private static Job copy(Job job, String name, String lot, long openedAtMicros) {
    return Job.opened(
        new Job.Order(name, job.part(), lot, job.details()),
        job.workplace(),
        job.inspection(),
        openedAtMicros);
  }

  private Job job(Call call) {
    return find(store.jobs(), call);
  }

  static Job find(Jobs jobs, Call call) {
    long id = call.id("job");
    return jobs.find(id).orElseThrow(() -> Refusal.notFound("job", id));
  }

  private JobView view(Job job) {
    Optional<Job> active = store.jobs().activeOn(job.station());
    boolean isActive = active.isPresent() && active.get().id() == job.id();
    return JobView.of(
        job,
        store.jobs().materialLot(job.id()).orElse(""),
        isActive,
        store.readings().countOfJob(job.id()));
  }

  private JobStation jobStations(@Nullable String machineBefore) {
    return new JobStation(stations.settings(), store.gauges(), machineBefore);
  }

  private long nowMicros() {
    return Times.micros(Instant.now(clock));
  }
}
