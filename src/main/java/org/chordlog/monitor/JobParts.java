package org.chordlog.monitor;

import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Exclusion;
import org.chordlog.measure.Job;
import org.chordlog.measure.Reading;
import org.chordlog.stats.GapTally;
import org.chordlog.stats.JobStatistics;
import org.chordlog.stats.LotSummary;
import org.chordlog.stats.PassSummary;
import org.chordlog.stats.PassTally;
import org.chordlog.stats.PieceGap;
import org.chordlog.stats.control.Observation;
import org.chordlog.stats.control.Scope;
import org.chordlog.stats.control.StatisticsPlan;
import org.chordlog.store.MaterialLots;
import org.chordlog.store.Phases;
import org.chordlog.store.Store;

/** A job lot by lot and pass by pass, from its readings in the store. */
final class JobParts {
  /** Most readings, and most lots. */
  static final int MOST = 200_000;

  static final int MOST_LOTS = 100;
  private static final int PAGE = 1_000;

  private final StatisticsPlan plan;
  private final Observations observations;
  private final Map<Long, Exclusion> exclusions = new HashMap<>();
  private final MaterialLots materialLots;
  private final Map<String, Lot> lots = new LinkedHashMap<>();
  private final Phases phases;

  /** Of each lot, by its first reading. */
  private final Map<Long, Integer> newestPhase = new HashMap<>();

  private final PassTally passes = new PassTally();
  private final GapTally positions;
  private long excluded;

  private record Lot(JobStatistics statistics, long firstReadingId, Set<Integer> pieces) {}

  private JobParts(Store store, Job job) {
    plan = Monitor.plan(job);
    materialLots = MaterialLots.of(store.jobs(), job);
    phases = Phases.of(store.jobs(), job);
    positions = new GapTally(job.plan().positions());
    observations = new Observations(store.readings());
    store
        .readings()
        .exclusionsOfJob(job.id())
        .forEach(each -> exclusions.put(each.readingId(), each));
  }

  /** Throws {@link BadInput} where the job has more than {@value #MOST} readings. */
  static JobParts of(Store store, Job job) {
    long jobId = job.id();
    if (store.readings().countOfJob(jobId) > MOST) {
      throw new BadInput("job", jobId, "has too many readings for this", "up to " + MOST);
    }
    JobParts parts = new JobParts(store, job);
    long after = 0;
    List<Reading> page;
    do {
      page = store.readings().ofJob(jobId, after, PAGE);
      page.forEach(parts::take);
      after = page.isEmpty() ? after : page.get(page.size() - 1).id();
    } while (page.size() == PAGE);
    return parts;
  }

  private void take(Reading reading) {
    Observation seen = observations.of(reading);
    Exclusion last = exclusions.get(reading.id());
    boolean counts = last == null || !last.excluded();
    if (last == null || !last.moved()) {
      positions.add(reading.piece(), reading.position(), counts);
    }
    excluded += counts ? 0 : 1;
    if (seen == null || (last != null && last.excluded() && !last.rolledAgain())) {
      return;
    }
    passes.add(reading.piece(), reading.position(), reading.circumstances().pass(), seen.value());
    if (counts) {
      Lot lot = lot(reading);
      startPhase(lot, reading);
      lot.statistics().add(seen);
      lot.pieces().add(reading.piece());
    }
  }

  /** No range is counted across a correction within a lot, nor where a lot comes back. */
  private void startPhase(Lot lot, Reading reading) {
    int phase = phases.of(reading);
    Integer before = newestPhase.put(lot.firstReadingId(), phase);
    if (before != null && before != phase) {
      lot.statistics().startPhase();
    }
  }

  private Lot lot(Reading reading) {
    String name = materialLots.of(reading);
    if (lots.size() == MOST_LOTS && !lots.containsKey(name)) {
      throw new BadInput("lots", name, "is one too many", "up to " + MOST_LOTS);
    }
    return lots.computeIfAbsent(
        name, any -> new Lot(new JobStatistics(plan), reading.id(), new HashSet<>()));
  }

  /** Of one characteristic, in the order of their first readings. */
  List<LotSummary> lots(String characteristic) {
    return lots.entrySet().stream()
        .filter(each -> each.getValue().statistics().characteristics().contains(characteristic))
        .map(each -> summary(each.getKey(), each.getValue(), characteristic))
        .toList();
  }

  private static LotSummary summary(String name, Lot lot, String characteristic) {
    return new LotSummary(
        name,
        lot.firstReadingId(),
        lot.statistics().lastReadingId(),
        lot.pieces().size(),
        lot.statistics().summary(characteristic, Scope.JOB));
  }

  PassSummary passes() {
    return passes.summary();
  }

  /** {@code open}: the newest piece may get more readings. */
  List<PieceGap> gaps(boolean open) {
    return open ? positions.gapsBeforeNewest() : positions.gaps();
  }

  long excluded() {
    return excluded;
  }
}
