package org.chordlog.web;

import java.util.Set;
import java.util.TreeSet;
import org.chordlog.station.Stations;
import org.chordlog.store.JobQuery;
import org.chordlog.store.Store;
import org.chordlog.web.http.Call;
import org.chordlog.web.http.Refusal;

/** The machines that are known: those of the stations, and those that jobs name. */
record MachineNames(Store store, Stations stations) {
  private static final int JOBS_LOOKED_AT = 200;

  /** Those of the stations and of the newest jobs. */
  Set<String> all() {
    Set<String> names = new TreeSet<>();
    stations.settings().forEach(each -> names.add(each.machine()));
    store
        .jobs()
        .search(JobQuery.of(JobQuery.Order.NEWEST, JOBS_LOOKED_AT))
        .forEach(job -> names.add(job.machine()));
    return names;
  }

  /** The one in the path; 404 where no station and no job names it. */
  String known(Call call) {
    String name = call.name("machine");
    JobQuery any = JobQuery.of(JobQuery.Order.NEWEST, 1).onMachine(name);
    if (!all().contains(name) && store.jobs().search(any).isEmpty()) {
      throw Refusal.notFound("machine", name);
    }
    return name;
  }
}
