package org.chordlog.web;

import java.util.Comparator;
import java.util.List;
import org.chordlog.measure.Job;
import org.chordlog.measure.Reading;
import org.chordlog.measure.Sentence;
import org.chordlog.measure.alert.Alert;
import org.chordlog.measure.alert.AlertSubject;
import org.chordlog.monitor.Monitor;
import org.chordlog.monitor.RollerWatch;
import org.chordlog.store.JobQuery;
import org.chordlog.store.Store;
import org.chordlog.verdict.AlertBesideStatus;
import org.chordlog.verdict.MachineStatement;
import org.chordlog.verdict.RollerStatement;
import org.chordlog.verdict.Statement;
import org.chordlog.verdict.Tone;
import org.chordlog.web.http.Times;
import org.jspecify.annotations.Nullable;

/** Machines as they are judged, one or all. */
record MachineViews(Store store, Monitor monitor, MachineNames machines, RollerWatch watch) {
  /** Among so many of a machine's newest jobs is the one that is measured now. */
  private static final int JOBS_LIKELY_MEASURED = 5;

  /** Those that need attention first. */
  List<MachineView> list() {
    return machines.all().stream()
        .map(this::of)
        .sorted(Comparator.comparingInt(MachineView::weight).reversed())
        .toList();
  }

  private List<Job> newest(String machine, int limit) {
    return store.jobs().search(JobQuery.of(JobQuery.Order.NEWEST, limit).onMachine(machine));
  }

  MachineView of(String machine) {
    MachineJudge judge = new MachineJudge(store, monitor);
    Double tolerance = judge.tolerance(machine);
    List<Alert> open = open(machine);
    MachineView view =
        judge.of(
            machine,
            (judged, behind) ->
                MachineView.of(machine, judged, beside(judged, open), behind, tolerance));
    return view.with(rollers(machine), lastReadingAt(machine));
  }

  private static Sentence beside(MachineStatement judged, List<Alert> open) {
    return new AlertBesideStatus(judged, open).sentence();
  }

  private List<Alert> open(String machine) {
    AlertSubject subject = AlertSubject.machine(machine);
    return store.alerts().open().stream().filter(each -> each.subject().equals(subject)).toList();
  }

  /** Null where its newest jobs have no reading. */
  private @Nullable String lastReadingAt(String machine) {
    return newest(machine, JOBS_LIKELY_MEASURED).stream()
        .flatMap(job -> store.readings().newestOfJob(job.id()).stream())
        .map(Reading::wallMicros)
        .max(Comparator.naturalOrder())
        .map(Times::iso)
        .orElse(null);
  }

  /** Null where there is nothing to be done. */
  private @Nullable Statement rollers(String machine) {
    if (store.machines().rollers(machine).isEmpty()) {
      return null;
    }
    RollerWatch.Report report = watch.of(machine);
    Statement said =
        new RollerStatement(report.verdict(), report.twice(), report.trends()).statement();
    return said.tone() == Tone.GOOD || said.tone() == Tone.QUIET ? null : said;
  }
}
