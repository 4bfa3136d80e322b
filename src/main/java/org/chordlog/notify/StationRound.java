package org.chordlog.notify;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.chordlog.measure.Calibration;
import org.chordlog.measure.InterimCheck;
import org.chordlog.measure.Job;
import org.chordlog.measure.Reading;
import org.chordlog.measure.Zero;
import org.chordlog.measure.alert.AlertFigure;
import org.chordlog.measure.alert.AlertKey;
import org.chordlog.measure.alert.AlertKind;
import org.chordlog.notify.rule.Found;
import org.chordlog.notify.rule.StationFacts;
import org.chordlog.notify.rule.StationFacts.FailedCheck;
import org.chordlog.notify.rule.StationFacts.Gauge;
import org.chordlog.notify.rule.StationFacts.Link;
import org.chordlog.notify.rule.StationRule;
import org.chordlog.notify.rule.Steadied;
import org.chordlog.radius.Doubt;
import org.chordlog.station.StationStatus;
import org.chordlog.station.StationStatus.LinkState;
import org.chordlog.store.Gauges;
import org.chordlog.store.Store;
import org.jspecify.annotations.Nullable;

/** Looks at the links of all stations, and at their gauges once a minute; the watch's thread. */
final class StationRound implements Round {
  private static final long GAUGES_EACH_MICROS = 60_000_000L;
  private static final int PAGE = 1_000;
  private static final int MOST_IN_DOUBT = 10 * PAGE;
  private static final int CHECKS = 100;
  private static final Gauge UNKNOWN = new Gauge(null, null, false, null);

  private final Watched watched;
  private final Store store;
  private final AlertBook book;
  private final Steadied links = new Steadied();
  private final Steadied gauges = new Steadied();
  private final Map<String, Boolean> working = new HashMap<>();
  private @Nullable Long gaugesLooked;

  StationRound(Watched watched, AlertBook book) {
    this.watched = watched;
    this.store = watched.store();
    this.book = book;
  }

  @Override
  public void run(long atMicros) {
    List<StationStatus> all = watched.stations().get();
    Long before = gaugesLooked;
    boolean setBack = before != null && atMicros < before;
    boolean gaugesToo = before == null || setBack || atMicros - before >= GAUGES_EACH_MICROS;
    if (gaugesToo) {
      working.clear();
      gaugesLooked = atMicros;
    }
    List<StationFacts> facts = all.stream().map(each -> facts(each, gaugesToo)).toList();
    tell(links, StationRule.LINKS, StationRule.links(facts, atMicros), atMicros);
    if (gaugesToo) {
      tell(gauges, StationRule.GAUGES, StationRule.gauges(facts, atMicros), atMicros);
    }
  }

  private void tell(Steadied delays, Set<AlertKind> kinds, List<Found> found, long atMicros) {
    Steadied.Result result = delays.take(kinds, found, book.alerts().open(), atMicros);
    book.tell(result.appeared(), result.gone(), Map.of(), atMicros);
  }

  private StationFacts facts(StationStatus status, boolean gaugeToo) {
    boolean lost = status.link() != LinkState.OPEN && status.link() != LinkState.STOPPED;
    return new StationFacts(
        status.station(),
        working(status),
        new Link(lost, status.sinceMicros(), status.message()),
        gaugeToo ? gauge(status) : UNKNOWN);
  }

  /** Whether its job is open, as of a minute ago at most. */
  private boolean working(StationStatus status) {
    return working.computeIfAbsent(
        status.station(),
        station ->
            store
                .jobs()
                .activeOn(station)
                .filter(job -> job.state() == Job.State.OPEN)
                .isPresent());
  }

  private Gauge gauge(StationStatus status) {
    String station = status.station();
    Long bridge = status.bridgeId();
    if (bridge == null) {
      return UNKNOWN;
    }
    Gauges all = store.gauges();
    Optional<Calibration> calibration = all.latestCalibration(station, bridge);
    Optional<Zero> zero = all.zeroOfMounted(station).filter(each -> each.bridgeId() == bridge);
    return new Gauge(
        failed(station, bridge, calibration.stream().toList()),
        calibration.map(Calibration::dueAtMicros).orElse(null),
        status.zeroStale(),
        zero.map(Zero::takenAtMicros).orElse(null));
  }

  /** A calibration after the check that failed makes the gauge fit again. */
  private @Nullable FailedCheck failed(
      String station, long bridge, List<Calibration> calibrations) {
    List<InterimCheck> checks = store.gauges().checks(station, bridge, CHECKS);
    Optional<Doubt> doubt =
        Doubt.of(checks, calibrations).stream()
            .filter(each -> each.beforeMicros() == Long.MAX_VALUE)
            .findFirst();
    if (doubt.isEmpty()) {
      return null;
    }
    InterimCheck newest = checks.get(0);
    Double radius = newest.radiusMm();
    return new FailedCheck(
        radius == null ? null : (Double) (radius - newest.masterRadiusMm()),
        newest.masterRadiusMm(),
        inDoubt(station, bridge, doubt.get()));
  }

  /** Counted when it is raised, at most {@value #MOST_IN_DOUBT}; the same number afterwards. */
  private long inDoubt(String station, long bridge, Doubt doubt) {
    Optional<Double> told =
        book.alerts()
            .open(AlertKey.station(AlertKind.GAUGE_UNFIT, station))
            .map(each -> each.evidence().figure(AlertFigure.READINGS_IN_DOUBT));
    return told.map(Math::round).orElseGet(() -> count(station, bridge, doubt));
  }

  private long count(String station, long bridge, Doubt doubt) {
    long count = 0;
    long after = 0;
    List<Reading> page;
    do {
      page =
          store
              .readings()
              .ofBridge(station, bridge, doubt.afterMicros(), Long.MAX_VALUE, after, PAGE);
      count += page.size();
      after = page.isEmpty() ? after : page.get(page.size() - 1).id();
    } while (page.size() == PAGE && count < MOST_IN_DOUBT);
    return count;
  }
}
