package org.chordlog.web;

import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.chordlog.measure.Job;
import org.chordlog.measure.alert.Alert;
import org.chordlog.measure.alert.AlertSubject;
import org.chordlog.monitor.Monitor;
import org.chordlog.monitor.RollerWatch;
import org.chordlog.station.StationClock;
import org.chordlog.station.Stations;
import org.chordlog.store.JobQuery;
import org.chordlog.store.Plant;
import org.chordlog.store.Store;

/**
 * The machines of one workshop computer, and its alerts that are about none of them; {@code of} is
 * how it was when this was made.
 */
record EdgeSummary(
    Plant.Edge of, List<PlantMachine> machines, List<PlantMachine.AlertLine> alerts) {
  private static final int JOBS_LOOKED_AT = 50;
  private static final int JOBS_OF_STATIONS = 200;
  private static final Comparator<Alert> BY_URGENCY =
      Comparator.<Alert, Boolean>comparing(each -> !each.state().waits())
          .thenComparing(each -> each.kind().priority())
          .thenComparing(Alert::id);

  /** Reads all there is of that computer. */
  static EdgeSummary made(Plant.Edge edge, Store store, Monitor monitor) {
    Stations none = new Stations(store, StationClock.system());
    MachineNames names = new MachineNames(store, none);
    MachineViews views = new MachineViews(store, monitor, names, new RollerWatch(store));
    Map<String, String> machines = machinesOfStations(store);
    List<Alert> open = store.alerts().open().stream().sorted(BY_URGENCY).toList();
    List<Attention> jobs = new AttentionRoutes(store, monitor).found(JOBS_LOOKED_AT);
    List<PlantMachine> made =
        views.list().stream()
            .map(
                view ->
                    PlantMachine.of(
                        edge,
                        view,
                        of(view.machine(), open, machines),
                        of(view.machine(), jobs, store),
                        id -> name(store, id)))
            .toList();
    return new EdgeSummary(edge, made, others(made, open, machines));
  }

  /** Alerts that wait for somebody. */
  int waiting() {
    return (int)
        Stream.concat(
                alerts.stream(), machines.stream().flatMap(machine -> machine.alerts().stream()))
            .filter(PlantMachine.AlertLine::waits)
            .count();
  }

  /** Whether nothing has arrived from that computer since. */
  boolean stillOf(Plant.Edge edge) {
    Plant.Delivered before = of.delivered();
    Plant.Delivered now = edge.delivered();
    return of.incarnation() == edge.incarnation()
        && of.name().equals(edge.name())
        && of.site().equals(edge.site())
        && (before == null
            ? now == null
            : now != null && before.receivedMicros() == now.receivedMicros());
  }

  /** By the newest job of each. */
  private static Map<String, String> machinesOfStations(Store store) {
    Map<String, String> machines = new HashMap<>();
    store
        .jobs()
        .search(JobQuery.of(JobQuery.Order.NEWEST, JOBS_OF_STATIONS))
        .forEach(job -> machines.putIfAbsent(job.station(), job.machine()));
    return machines;
  }

  private static String machine(Alert alert, Map<String, String> machines) {
    AlertSubject subject = alert.subject();
    return switch (subject.type()) {
      case MACHINE -> subject.name();
      case STATION -> machines.getOrDefault(subject.name(), "");
      case SERVICE, EDGE -> "";
    };
  }

  private static List<Alert> of(String machine, List<Alert> open, Map<String, String> machines) {
    return open.stream().filter(each -> machine(each, machines).equals(machine)).toList();
  }

  private static List<Attention> of(String machine, List<Attention> jobs, Store store) {
    return jobs.stream()
        .filter(
            each ->
                store
                    .jobs()
                    .find(each.jobId())
                    .filter(job -> job.machine().equals(machine))
                    .isPresent())
        .toList();
  }

  private static String name(Store store, long job) {
    return store.jobs().find(job).map(Job::name).orElse("job " + job);
  }

  private static List<PlantMachine.AlertLine> others(
      List<PlantMachine> made, List<Alert> open, Map<String, String> machines) {
    List<String> shown = made.stream().map(PlantMachine::machine).toList();
    return open.stream()
        .filter(each -> !shown.contains(machine(each, machines)))
        .map(PlantMachine.AlertLine::of)
        .toList();
  }
}
