package org.chordlog.web;

import java.util.List;
import org.chordlog.chart.LineSnapshot;
import org.chordlog.monitor.RollerWatch;
import org.chordlog.profile.RollerSight;
import org.chordlog.profile.RollerTrend;
import org.chordlog.profile.RollerVerdict;

/** What was found of rollers, for its pictures. */
final class RollerCharts {
  private RollerCharts() {}

  /** Without profiles. */
  static LineSnapshot of(RollerWatch.Report report) {
    return new LineSnapshot("mm", null, spectrum(report), ripples(report));
  }

  /** The profiles of pieces, with what those pieces tell of the rollers. */
  static LineSnapshot with(LineSnapshot profiles, RollerWatch.Report report) {
    return new LineSnapshot(
        profiles.unit(), profiles.profiles(), spectrum(report), ripples(report));
  }

  private static LineSnapshot.Spectrum spectrum(RollerWatch.Report report) {
    List<LineSnapshot.Wave> waves =
        report.spectrum().waves().stream()
            .map(each -> new LineSnapshot.Wave(each.wavelengthMm(), each.amplitudePercent()))
            .toList();
    RollerVerdict verdict = report.verdict();
    return new LineSnapshot.Spectrum(
        Math.min(RollerWatch.SPECTRUM_PIECES, report.pieces()),
        waves,
        verdict == null ? List.of() : verdict.sights().stream().map(RollerCharts::band).toList());
  }

  private static LineSnapshot.RollerBand band(RollerSight sight) {
    double wave = sight.wavelengthMm();
    return new LineSnapshot.RollerBand(
        sight.roller().name(), wave * (1 - RollerSight.SLIP), wave * (1 + RollerSight.SLIP));
  }

  private static List<LineSnapshot.Ripple> ripples(RollerWatch.Report report) {
    return report.trends().stream().map(RollerCharts::ripple).toList();
  }

  private static LineSnapshot.Ripple ripple(RollerTrend trend) {
    return new LineSnapshot.Ripple(
        trend.roller(), trend.newest(), trend.limit(), trend.amplitudePercent());
  }
}
