package org.chordlog.web;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.chordlog.measure.Decision;
import org.chordlog.measure.Face;
import org.chordlog.measure.Job;
import org.chordlog.measure.Reading;
import org.chordlog.measure.SetUp;
import org.chordlog.radius.Conformity;
import org.chordlog.store.KeptReading;
import org.chordlog.store.MaterialLots;
import org.chordlog.store.Store;

/** Readings for one answer, each judged against the limits that its job has now. */
final class ReadingViews {
  private final Store store;
  private final Map<Long, Optional<Job>> jobs = new HashMap<>();
  private final Map<Long, Optional<Face>> faces = new HashMap<>();
  private final Map<Long, MaterialLots> lots = new HashMap<>();

  ReadingViews(Store store) {
    this.store = store;
  }

  List<ReadingView> of(List<Reading> readings) {
    return store.readings().withExclusions(readings).stream().map(this::view).toList();
  }

  ReadingView of(Reading reading) {
    return of(List.of(reading)).get(0);
  }

  /** Those that are known to count: none of them is looked for among the exclusions. */
  List<ReadingView> ofCounted(List<Reading> readings) {
    return readings.stream().map(reading -> view(new KeptReading(reading, null))).toList();
  }

  private ReadingView view(KeptReading kept) {
    return ReadingView.of(
        new KeptReading(lotPutRight(kept.reading()), kept.exclusion()),
        decisionNow(kept.reading()));
  }

  /** The reading with its lot as the job has it now. */
  Reading lotPutRight(Reading reading) {
    return jobs.computeIfAbsent(reading.jobId(), store.jobs()::find)
        .map(job -> lots.computeIfAbsent(job.id(), any -> MaterialLots.of(store.jobs(), job)))
        .map(of -> of.of(reading))
        .filter(lot -> !lot.isEmpty())
        .map(lot -> reading.withCircumstances(reading.circumstances().withMaterialLot(lot)))
        .orElse(reading);
  }

  /** As taken where the radius was specified on another face then. */
  Decision decisionNow(Reading reading) {
    return jobs.computeIfAbsent(reading.jobId(), store.jobs()::find)
        .map(job -> judged(reading, job))
        .orElse(reading.decision());
  }

  private Decision judged(Reading reading, Job job) {
    Integer revision = reading.circumstances().revision();
    boolean same = revision != null && revision == job.revision();
    return same || !sameFace(reading, job)
        ? reading.decision()
        : Conformity.ISO_14253_1.decide(reading.radius(), job.specification());
  }

  private boolean sameFace(Reading reading, Job job) {
    return faces
        .computeIfAbsent(
            reading.setUpId(), id -> store.readings().setUp(id).map(SetUp::specifiedFace))
        .map(face -> face == job.specification().face())
        .orElse(false);
  }
}
