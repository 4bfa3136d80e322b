package org.chordlog.web;

import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.chordlog.measure.Calibration;
import org.chordlog.measure.Job;
import org.chordlog.measure.Mark;
import org.chordlog.measure.Reading;
import org.chordlog.radius.Doubt;
import org.chordlog.stats.drift.DriftFinding;
import org.chordlog.store.Gauges;
import org.chordlog.store.JobQuery;
import org.chordlog.store.Store;
import org.chordlog.verdict.GaugeBesideMachine;

/** Where a move of a machine's level began, and whether it may have been the gauge. */
record ReadingsOfMove(Store store, String machine) {
  private static final Set<Mark> ZERO =
      EnumSet.of(Mark.ZERO_MOVED, Mark.ZERO_OF_OTHER_BRIDGE, Mark.ZERO_DOUBTFUL);

  private static final int MOST_CHECKS = 500;

  /** The readings before the first one of a move, those of other machines among them. */
  private static final int BEFORE = 200;

  private static final int JOBS = 5;

  /** Which piece of its job it began with; empty where the job numbers it as the machine does. */
  String place(DriftFinding move) {
    return first(move)
        .filter(each -> each.piece() != move.since().piece())
        .flatMap(each -> store.jobs().readable(each.jobId()).map(job -> place(each, job)))
        .orElse("");
  }

  private static String place(Reading reading, Job job) {
    return "piece " + reading.piece() + " of job " + job.name();
  }

  /** By the readings about where it began and the newest one. */
  GaugeBesideMachine gauge(DriftFinding move) {
    Optional<Reading> first = first(move);
    Optional<Reading> before = first.flatMap(this::before);
    List<Reading> seen =
        Stream.of(before, first, newest()).flatMap(Optional::stream).distinct().toList();
    if (seen.stream().anyMatch(this::checkFailed)) {
      return GaugeBesideMachine.CHECK_FAILED;
    }
    if (seen.stream().anyMatch(each -> each.marks().stream().anyMatch(ZERO::contains))) {
      return GaugeBesideMachine.ZERO_IN_DOUBT;
    }
    boolean other = before.isPresent() && bridge(before.get()) != bridge(first.orElseThrow());
    return other ? GaugeBesideMachine.OTHER_BRIDGE : GaugeBesideMachine.TRUSTED;
  }

  private Optional<Reading> first(DriftFinding move) {
    return store
        .readings()
        .firstOfMachine(machine, move.since().atMicros())
        .flatMap(store.readings()::find);
  }

  private Optional<Reading> before(Reading first) {
    return store.readings().ofMachine(machine, Math.max(0, first.id() - BEFORE), BEFORE).stream()
        .filter(each -> each.id() < first.id())
        .reduce((one, next) -> next);
  }

  private Optional<Reading> newest() {
    return store.jobs().search(JobQuery.of(JobQuery.Order.NEWEST, JOBS).onMachine(machine)).stream()
        .flatMap(job -> store.readings().newestOfJob(job.id()).stream())
        .max((one, other) -> Long.compare(one.id(), other.id()));
  }

  private long bridge(Reading reading) {
    return store.readings().setUp(reading.setUpId()).map(each -> each.bridge().id()).orElse(0L);
  }

  private boolean checkFailed(Reading reading) {
    return doubts(reading.station(), bridge(reading)).stream()
        .anyMatch(each -> each.covers(reading.wallMicros()));
  }

  private List<Doubt> doubts(String station, long bridge) {
    Gauges gauges = store.gauges();
    List<Calibration> calibrations =
        gauges.calibrations(MOST_CHECKS).stream()
            .filter(each -> each.station().equals(station) && each.bridgeId() == bridge)
            .toList();
    return Doubt.of(gauges.checks(station, bridge, MOST_CHECKS), calibrations);
  }
}
