package org.chordlog.monitor;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.chordlog.measure.EventWithdrawal;
import org.chordlog.measure.Exclusion;
import org.chordlog.measure.JobEvent;
import org.chordlog.measure.Reading;
import org.chordlog.measure.Specification;
import org.chordlog.measure.SpecificationRevision;
import org.chordlog.stats.math.Checkpointed;
import org.chordlog.store.EventPlaces;
import org.chordlog.store.Store;

/** Running statistics over all jobs of one machine, without excluded readings. */
abstract class OverMachine<S extends Checkpointed> extends CatchUp<S> {
  private final Store store;
  private final String machine;
  private final EventPlaces places;
  private final Map<Long, Boolean> excluded = new HashMap<>();
  private final Map<Long, List<SpecificationRevision>> specified = new HashMap<>();

  OverMachine(Store store, String machine) {
    this.store = store;
    this.machine = machine;
    this.places = new EventPlaces(store.readings(), machine);
    exclusions(0).forEach(each -> excluded.put(each.readingId(), each.excluded()));
  }

  Store store() {
    return store;
  }

  String machine() {
    return machine;
  }

  /** Specifications may have changed since the last read. */
  @Override
  boolean prepare() {
    specified.clear();
    return false;
  }

  @Override
  final List<JobEvent> events(long afterId) {
    return store.jobs().eventsOfMachine(machine, afterId).stream().map(places::placed).toList();
  }

  @Override
  final List<Exclusion> exclusions(long afterId) {
    return store.readings().exclusionsOfMachine(machine, afterId);
  }

  @Override
  final List<EventWithdrawal> withdrawals() {
    return store.jobs().withdrawalsOfMachine(machine, 0);
  }

  @Override
  final List<Reading> readings(long afterId, int limit) {
    return store.readings().ofMachine(machine, afterId, limit);
  }

  @Override
  final long kept() {
    return store.readings().countOfMachine(machine);
  }

  @Override
  final void note(S statistics, Exclusion each) {
    excluded.put(each.readingId(), each.excluded());
  }

  @Override
  final void take(S statistics, Reading reading) {
    if (!excluded.getOrDefault(reading.id(), false)) {
      counted(statistics, reading);
    }
  }

  /** A reading that is not excluded. */
  abstract void counted(S statistics, Reading reading);

  /** That of the reading's revision; by time where that was not recorded. */
  final Specification specification(Reading reading) {
    List<SpecificationRevision> all =
        specified.computeIfAbsent(reading.jobId(), store.jobs()::revisions);
    Integer revision = reading.circumstances().revision();
    SpecificationRevision inForce = all.get(0);
    for (SpecificationRevision each : all) {
      boolean then =
          revision == null ? each.atMicros() <= reading.wallMicros() : each.revision() == revision;
      inForce = then ? each : inForce;
    }
    return inForce.to();
  }
}
