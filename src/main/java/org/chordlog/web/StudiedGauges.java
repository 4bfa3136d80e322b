package org.chordlog.web;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.GaugeStudy;
import org.chordlog.measure.Job;
import org.chordlog.measure.Reading;
import org.chordlog.measure.SetUp;
import org.chordlog.report.qif.QifStudy;
import org.chordlog.stats.LotSummary;
import org.chordlog.stats.capability.StudiedSpread;
import org.chordlog.stats.capability.Summary;
import org.chordlog.store.Store;
import org.chordlog.study.StudyFigure;
import org.chordlog.study.StudyResult;
import org.chordlog.verdict.StudiedGauge;
import org.jspecify.annotations.Nullable;

/**
 * Studies that are done, for those who rest on them. What a study found is worked out once, since
 * its measurements don't change any more; any thread.
 */
final class StudiedGauges {
  private static final int NEWEST = 200;

  private final Store store;
  private final Map<Long, Optional<Done>> done = new ConcurrentHashMap<>();

  /** A study with its result and the bridge that it was done with. */
  private record Done(GaugeStudy study, StudyResult result, long bridgeId) {}

  StudiedGauges(Store store) {
    this.store = store;
  }

  /** What the newest study with operators or repeats on pieces found of the job's gauge. */
  Optional<StudiedGauge> of(Job job) {
    return ofGauge(job).stream()
        .filter(each -> findsTheGauge(each.study().design().kind()))
        .flatMap(each -> gauge(each, job).stream())
        .findFirst();
  }

  /** Not where the pieces' own difference is in what is found. */
  private static boolean findsTheGauge(GaugeStudy.Kind kind) {
    return !kind.onMasters() && kind != GaugeStudy.Kind.LOTS;
  }

  /** With what the study found, if there is one, in place of what the readings' budgets state. */
  static Summary told(Summary summary, @Nullable StudiedGauge studied) {
    return studied == null
        ? summary
        : new StudiedSpread(
                studied.study(), studied.sigmaMm(), studied.lowerMm(), studied.upperMm())
            .in(summary);
  }

  /** The same of a lot. */
  static LotSummary told(LotSummary lot, @Nullable StudiedGauge studied) {
    return new LotSummary(
        lot.lot(),
        lot.firstReadingId(),
        lot.lastReadingId(),
        lot.pieces(),
        told(lot.summary(), studied));
  }

  /** All studies of the gauge that the job was measured with, the newest first. */
  List<QifStudy> forQif(Job job) {
    return ofGauge(job).stream()
        .map(each -> new QifStudy(each.study().name(), each.result()))
        .toList();
  }

  private List<Done> ofGauge(Job job) {
    Optional<Long> bridge = bridge(job);
    return store.studies().list(Long.MAX_VALUE, NEWEST).stream()
        .filter(study -> study.state() == GaugeStudy.State.DONE)
        .filter(study -> study.station().equals(job.station()))
        .flatMap(study -> done.computeIfAbsent(study.id(), id -> evaluated(study)).stream())
        .filter(each -> bridge.filter(id -> id == each.bridgeId()).isPresent())
        .toList();
  }

  /** Of its newest reading, else the one that is mounted now. */
  private Optional<Long> bridge(Job job) {
    Optional<Reading> newest = store.readings().newestOfJob(job.id());
    return newest.isEmpty()
        ? store.gauges().mountedOn(job.station()).map(each -> each.id())
        : store.readings().setUp(newest.get().setUpId()).map(setUp -> setUp.bridge().id());
  }

  /** Empty where it shows nothing, as when all its values are the same. */
  private Optional<Done> evaluated(GaugeStudy study) {
    StudyEvaluation evaluation = new StudyEvaluation(store, study);
    try {
      StudyResult result = evaluation.result();
      return evaluation
          .setUp()
          .map(SetUp::bridge)
          .map(bridge -> new Done(study, result, bridge.id()));
    } catch (BadInput nothing) {
      return Optional.empty();
    }
  }

  private static Optional<StudiedGauge> gauge(Done done, Job job) {
    Optional<StudyFigure> figure = done.result().figure("GRR");
    double nominal = done.study().subject().specification().targetMm();
    return figure.flatMap(
        each ->
            Optional.ofNullable(each.value())
                .map(
                    sigma ->
                        new StudiedGauge(done.study().name(), sigma, each.lower(), each.upper())
                            .at(nominal, job.specification().targetMm())));
  }
}
