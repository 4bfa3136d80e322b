package org.chordlog.web;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.chordlog.measure.Bridge;
import org.chordlog.measure.Calibration;
import org.chordlog.measure.Indicator;
import org.chordlog.measure.InterimCheck;
import org.chordlog.measure.Mounted;
import org.chordlog.measure.Zero;
import org.chordlog.radius.Doubt;
import org.chordlog.station.StationSettings;
import org.chordlog.station.ZeroLifts;
import org.chordlog.store.Gauges;
import org.chordlog.store.Store;
import org.chordlog.verdict.StationIssue;
import org.chordlog.web.http.Times;
import org.jspecify.annotations.Nullable;

/** The gauge of a station: what is mounted, and whether it is fit to use. */
record GaugeView(
    String station,
    Indicator indicator,
    @Nullable BridgeView bridge,
    @JsonPropertyDescription("of the bridge mounted, set since it was mounted")
        @Nullable ZeroView zero,
    @JsonPropertyDescription("when the zero is too old; null without one")
        @Nullable String zeroFreshUntil,
    boolean zeroStale,
    @JsonPropertyDescription("of the bridge mounted") @Nullable CalibrationView calibration,
    GaugeRoutes.@Nullable CheckView lastCheck,
    @JsonPropertyDescription("readings after this time are in doubt; null where none are")
        @Nullable String inDoubtAfter,
    List<StationIssue> attention) {
  private static final long SOON_MICROS = 14L * 24 * 3_600_000_000L;

  static GaugeView of(StationSettings settings, Store store, long nowMicros) {
    String station = settings.name();
    Gauges gauges = store.gauges();
    ZeroLifts lifts = new ZeroLifts(store.checkpoints(), station);
    Mounted mounted = gauges.mounted(station).orElse(null);
    Bridge bridge = mounted == null ? null : mounted.bridge();
    Optional<Zero> newest = gauges.latestZero(station);
    Optional<Zero> zero = newest.filter(z -> mounted != null && mounted.keeps(z));
    Calibration calibration =
        bridge == null ? null : gauges.latestCalibration(station, bridge.id()).orElse(null);
    List<InterimCheck> checks =
        bridge == null ? List.of() : gauges.checks(station, bridge.id(), 100);
    Long freshUntil =
        zero.map(z -> settings.zero().freshUntilMicros(z.takenAtMicros())).orElse(null);
    boolean stale = freshUntil != null && nowMicros > freshUntil;
    List<StationIssue> attention = new ArrayList<>();
    ZeroView seen = zero.map(z -> ZeroView.of(z, lifts.doubt(z.id()))).orElse(null);
    checked(checks, attention);
    doubted(seen, attention);
    mounted(bridge, newest.isPresent(), zero.isPresent(), stale, attention);
    calibrated(calibration, nowMicros, attention);
    return new GaugeView(
        station,
        settings.indicator(),
        bridge == null ? null : BridgeView.of(bridge),
        seen,
        freshUntil == null ? null : Times.iso(freshUntil),
        stale,
        calibration == null ? null : CalibrationView.of(calibration),
        checks.isEmpty() ? null : GaugeRoutes.CheckView.of(checks.get(0)),
        inDoubtAfter(checks, calibration),
        attention);
  }

  private static void checked(List<InterimCheck> checks, List<StationIssue> attention) {
    if (!checks.isEmpty() && !checks.get(0).passed()) {
      attention.add(StationIssue.CHECK_FAILED);
    }
  }

  private static void doubted(@Nullable ZeroView zero, List<StationIssue> attention) {
    if (zero != null && zero.doubt() != null) {
      attention.add(StationIssue.ZERO_DOUBTFUL);
    }
  }

  private static void mounted(
      @Nullable Bridge bridge,
      boolean anyZero,
      boolean zeroed,
      boolean stale,
      List<StationIssue> attention) {
    if (bridge == null) {
      attention.add(StationIssue.NO_BRIDGE);
    } else if (!zeroed) {
      attention.add(anyZero ? StationIssue.ZERO_OF_OTHER_BRIDGE : StationIssue.ZERO_MISSING);
    } else if (stale) {
      attention.add(StationIssue.ZERO_STALE);
    }
  }

  private static void calibrated(
      @Nullable Calibration calibration, long nowMicros, List<StationIssue> attention) {
    if (calibration == null) {
      attention.add(StationIssue.CALIBRATION_MISSING);
    } else if (calibration.dueAtMicros() <= nowMicros) {
      attention.add(StationIssue.CALIBRATION_OVERDUE);
    } else if (calibration.dueAtMicros() - nowMicros < SOON_MICROS) {
      attention.add(StationIssue.CALIBRATION_DUE_SOON);
    }
  }

  /** Since which check the readings now taken are in doubt. */
  private static @Nullable String inDoubtAfter(
      List<InterimCheck> checks, @Nullable Calibration calibration) {
    List<Calibration> calibrations = calibration == null ? List.of() : List.of(calibration);
    return Doubt.of(checks, calibrations).stream()
        .filter(doubt -> doubt.beforeMicros() == Long.MAX_VALUE)
        .map(doubt -> Times.iso(Math.max(0, doubt.afterMicros())))
        .findFirst()
        .orElse(null);
  }
}
