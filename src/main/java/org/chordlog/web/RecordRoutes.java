package org.chordlog.web;

import java.util.List;
import org.chordlog.account.Right;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.EventWithdrawal;
import org.chordlog.measure.Incident;
import org.chordlog.measure.Job;
import org.chordlog.measure.JobEvent;
import org.chordlog.measure.Reading;
import org.chordlog.station.Happening;
import org.chordlog.station.Stations;
import org.chordlog.store.EventPlaces;
import org.chordlog.store.Store;
import org.chordlog.web.http.Call;
import org.chordlog.web.http.Needed;
import org.chordlog.web.http.Page;
import org.chordlog.web.http.Refusal;
import org.chordlog.web.http.Route;
import org.chordlog.web.http.Times;
import org.jspecify.annotations.Nullable;

/** What happened to a job's readings: exclusions, events, and the incidents of its station. */
final class RecordRoutes {
  private final Store store;
  private final Stations stations;

  RecordRoutes(Store store, Stations stations) {
    this.store = store;
    this.stations = stations;
  }

  /** An event that was taken back. */
  record WithdrawalView(long eventId, String reason, String at, String by) {
    static WithdrawalView of(EventWithdrawal w) {
      return new WithdrawalView(w.eventId(), w.reason(), Times.iso(w.atMicros()), w.by());
    }
  }

  /** Whether a reading is to be left out of the statistics, and why. */
  record ExclusionForm(@Needed @Nullable Boolean excluded, @Nullable String reason) {}

  List<Route> routes() {
    return List.of(
        Route.get("/api/jobs/{job}/exclusions", "Exclusions and their undoing, in order")
            .answersList(ExclusionView.class, this::exclusions),
        Route.post(
                Right.JUDGE,
                "/api/readings/{reading}/exclusion",
                "Leaves a reading out, or takes it in again")
            .body(ExclusionForm.class)
            .answers(ExclusionView.class, this::exclude),
        Route.get("/api/jobs/{job}/events", "What happened in a job, in order")
            .answersList(JobEventView.class, this::events),
        Route.post(
                Right.MEASURE,
                "/api/jobs/{job}/events",
                "Records what happened in a job after its last reading")
            .body(JobEventForm.class)
            .creates(JobEventView.class, this::happened),
        Route.post(
                Right.MEASURE,
                "/api/jobs/{job}/events/{event}/take-back",
                "Takes back an event that was recorded by mistake; it stays in the record")
            .body(Reason.class)
            .answers(WithdrawalView.class, this::takeBack),
        Route.get(
                "/api/machines/{machine}/events",
                "What happened on a machine, over its jobs, in order")
            .answersList(JobEventView.class, this::machineEvents),
        Route.get("/api/machines/{machine}/readings", "Readings of a machine over its jobs")
            .query("after", "integer", "cursor: only readings with an id above it")
            .query("limit", "integer", "1 to " + ReadingRoutes.MOST + ", 100 if left out")
            .answersPage(ReadingView.class, this::machineReadings),
        Route.get(
                "/api/stations/{station}/incidents", "Gaps, clock steps and the like, newest first")
            .query("before", "integer", "cursor: only incidents with an id below it")
            .query("limit", "integer", "1 to 500, 100 if left out")
            .answersPage(Incident.class, this::incidents));
  }

  private List<ExclusionView> exclusions(Call call) {
    long job = JobRoutes.find(store.jobs(), call).id();
    return store.readings().exclusionsOfJob(job).stream().map(ExclusionView::of).toList();
  }

  private ExclusionView exclude(Call call) {
    long id = call.id("reading");
    Reading reading = store.readings().find(id).orElseThrow(() -> Refusal.notFound("reading", id));
    ExclusionForm form = call.body(ExclusionForm.class);
    if (form.excluded() == null) {
      throw new BadInput("excluded", "", "is missing", "true, false");
    }
    String reason = new Reason(form.reason()).needed();
    return ExclusionView.of(
        stations.at(reading.station()).exclude(id, form.excluded(), reason, call.by()));
  }

  private List<JobEventView> events(Call call) {
    return ofJob(store, JobRoutes.find(store.jobs(), call));
  }

  static List<JobEventView> ofJob(Store store, Job job) {
    List<JobEvent> events = store.jobs().eventsOfJob(job.id());
    return JobEventView.all(
        EventZeros.of(store.gauges(), job.station(), events),
        events,
        store.jobs().withdrawalsOfJob(job.id(), 0));
  }

  private JobEventView happened(Call call) {
    Job job = JobRoutes.find(store.jobs(), call);
    Happening happening = call.body(JobEventForm.class).happening();
    return JobEventView.of(stations.at(job.station()).record(job, happening, call.by()));
  }

  private WithdrawalView takeBack(Call call) {
    Job job = JobRoutes.find(store.jobs(), call);
    long id = call.id("event");
    JobEvent event =
        store.jobs().eventsOfJob(job.id()).stream()
            .filter(each -> each.id() == id)
            .findFirst()
            .orElseThrow(() -> Refusal.notFound("event", id));
    String reason = call.body(Reason.class).needed();
    return WithdrawalView.of(stations.at(job.station()).takeBack(event, reason, call.by()));
  }

  private List<JobEventView> machineEvents(Call call) {
    String machine = call.name("machine");
    return JobEventView.all(
        EventZeros.none(),
        new EventPlaces(store.readings(), machine).inOrder(store.jobs().eventsOfMachine(machine)),
        store.jobs().withdrawalsOfMachine(machine, 0));
  }

  private Page<ReadingView> machineReadings(Call call) {
    int limit = (int) call.query("limit", 100, 1, ReadingRoutes.MOST);
    long after = call.query("after", 0, 0, Long.MAX_VALUE);
    List<Reading> page = store.readings().ofMachine(call.name("machine"), after, limit);
    return Page.of(new ReadingViews(store).of(page), limit, ReadingView::id, view -> view);
  }

  private Page<Incident> incidents(Call call) {
    String station = StationRoutes.known(stations, call);
    int limit = (int) call.query("limit", 100, 1, 500);
    long before = call.query("before", Long.MAX_VALUE, 1, Long.MAX_VALUE);
    List<Incident> page = store.incidents().ofStation(station, before, limit);
    return Page.of(page, limit, Incident::id, each -> each);
  }
}
