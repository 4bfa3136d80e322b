package org.chordlog.web;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import org.chordlog.account.Right;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Job;
import org.chordlog.measure.JobEvent;
import org.chordlog.measure.LogbookEntry;
import org.chordlog.measure.Recorded;
import org.chordlog.measure.Stale;
import org.chordlog.station.Happening;
import org.chordlog.station.StationSettings;
import org.chordlog.station.Stations;
import org.chordlog.store.Logbooks;
import org.chordlog.store.Store;
import org.chordlog.verdict.Words;
import org.chordlog.web.http.Call;
import org.chordlog.web.http.Needed;
import org.chordlog.web.http.Page;
import org.chordlog.web.http.Refusal;
import org.chordlog.web.http.Route;
import org.chordlog.web.http.Times;
import org.jspecify.annotations.Nullable;

/** The log book of each machine: what was done on it, when, by whom, before and after. */
final class LogbookRoutes {
  static final String PATH = "/api/machines/{machine}/logbook";
  private static final int MOST = 200;
  private final Store store;
  private final Stations stations;
  private final MachineNames machines;
  private final EndedRepairs repairs;
  private final Clock clock;

  LogbookRoutes(Store store, Stations stations, Clock clock) {
    this.store = store;
    this.repairs = new EndedRepairs(store.alerts(), stations);
    this.stations = stations;
    this.machines = new MachineNames(store, stations);
    this.clock = clock;
  }

  /** The entry as it should have been written, or that no such work was done. */
  record CorrectionForm(
      @Needed @Nullable String why,
      @JsonPropertyDescription("no such work was done; then entry is left out")
          @Nullable Boolean withdraws,
      @Nullable LogbookForm entry) {}

  List<Route> routes() {
    return List.of(
        Route.get(PATH, "Work done on a machine, the newest entry first")
            .query("before", "integer", "cursor: only entries with an id below it")
            .query("limit", "integer", "1 to " + MOST + ", 50 if left out")
            .answersPage(LogbookView.class, this::list),
        Route.post(Right.MACHINE, PATH, "Writes work done on a machine into its log book")
            .body(LogbookForm.class)
            .creates(LogbookView.class, this::add),
        Route.post(
                Right.MACHINE,
                PATH + "/{entry}/corrections",
                "Corrects an entry, or takes it back, by a new entry; the old one stays readable")
            .body(CorrectionForm.class)
            .creates(LogbookView.class, this::correct));
  }

  private Page<LogbookView> list(Call call) {
    int limit = (int) call.query("limit", 50, 1, MOST);
    long before = call.query("before", Long.MAX_VALUE, 1, Long.MAX_VALUE);
    List<Logbooks.Listed> page = store.logbooks().ofMachine(machines.known(call), before, limit);
    return Page.of(page, limit, each -> each.entry().id(), LogbookView::of);
  }

  private LogbookView add(Call call) {
    String machine = machines.known(call);
    LogbookForm form = call.body(LogbookForm.class);
    LogbookEntry entry = form.entry(machine, null, recorded(call));
    if (form.setsUp()) {
      setUp(entry);
    }
    LogbookEntry kept = store.logbooks().add(entry);
    if (form.endsRepair()) {
      repairs.end(kept);
    }
    return view(kept);
  }

  /** Before the entry: where a job refuses it, nothing is written and it can be tried again. */
  private void setUp(LogbookEntry entry) {
    String note = Words.of(entry.work());
    Happening happening = new Happening(JobEvent.Kind.SET_UP, null, null, "", note, null, null);
    for (StationSettings each : stations.settings()) {
      if (each.machine().equals(entry.machine())) {
        store
            .jobs()
            .activeOn(each.name())
            .filter(job -> job.state() == Job.State.OPEN)
            .ifPresent(
                job -> stations.at(each.name()).record(job, happening, entry.recorded().by()));
      }
    }
  }

  private LogbookView correct(Call call) {
    String machine = machines.known(call);
    Logbooks.Listed old = listed(machine, call.id("entry"));
    CorrectionForm form = call.body(CorrectionForm.class);
    String why = form.why() == null ? "" : form.why().strip();
    if (why.isEmpty()) {
      throw new BadInput("why", "", "is missing", "a reason");
    }
    try {
      return view(store.logbooks().add(corrected(old.entry(), form, why, recorded(call))));
    } catch (Stale e) {
      throw Refusal.changedMeanwhile(
          String.valueOf(e.getMessage()), LogbookView.of(newest(machine, old.entry().id())));
    }
  }

  private static LogbookEntry corrected(
      LogbookEntry old, CorrectionForm form, String why, Recorded recorded) {
    boolean withdraws = Boolean.TRUE.equals(form.withdraws());
    LogbookEntry.Correction correction = new LogbookEntry.Correction(old.id(), why, withdraws);
    if (withdraws) {
      return new LogbookEntry(0, old.machine(), old.work(), old.done(), correction, recorded);
    }
    if (form.entry() == null) {
      throw new BadInput("entry", "", "is missing", "the entry as it should be");
    }
    return form.entry().entry(old.machine(), correction, recorded);
  }

  private Logbooks.Listed listed(String machine, long id) {
    return store
        .logbooks()
        .find(id)
        .filter(each -> each.entry().machine().equals(machine))
        .orElseThrow(() -> Refusal.notFound("log book entry", id));
  }

  /** What replaces that entry in the end. */
  private Logbooks.Listed newest(String machine, long id) {
    Logbooks.Listed found = listed(machine, id);
    while (found.correctedById() != null) {
      found = listed(machine, found.correctedById());
    }
    return found;
  }

  private LogbookView view(LogbookEntry kept) {
    return LogbookView.of(new Logbooks.Listed(kept, null));
  }

  private Recorded recorded(Call call) {
    return new Recorded(Times.micros(Instant.now(clock)), call.by());
  }
}
