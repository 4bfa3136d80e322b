package org.chordlog.cli.station;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.chordlog.cli.common.JsonText;
import org.chordlog.measure.Length;
import org.chordlog.radius.CalibrationAdvice;
import org.chordlog.radius.CalibrationFit;
import org.chordlog.radius.MasterReading;

/** A fit of readings on masters, with what it does to the uncertainty of a radius. */
record MasterFit(List<MasterReading> readings, CalibrationFit fit, CalibrationAdvice advice) {
  /** A fitted parameter with its 95 % interval at k = 2, null ends where it was not fitted. */
  private Map<String, Object> figure(String name, double valueMm, int at) {
    double u = Math.sqrt(fit.covariance().get(at).get(at));
    Map<String, Object> figure = new LinkedHashMap<>();
    figure.put("name", name);
    figure.put("value", valueMm);
    figure.put("lower", u > 0 ? (Double) (valueMm - 2 * u) : null);
    figure.put("upper", u > 0 ? (Double) (valueMm + 2 * u) : null);
    figure.put("unit", "mm");
    figure.put("standardUncertainty", u);
    return figure;
  }

  String json() {
    Map<String, Object> json = new LinkedHashMap<>();
    json.put(
        "figures",
        List.of(
            figure("span", fit.spanMm(), 0),
            figure("zeroOffset", fit.zeroOffsetMm(), 1),
            figure("footRadius", fit.footRadiusMm(), 2)));
    json.put("fit", fit);
    json.put("advice", advice);
    return JsonText.of(json);
  }

  String text() {
    List<String> lines = new ArrayList<>();
    for (int i = 0; i < readings.size(); i++) {
      MasterReading reading = readings.get(i);
      lines.add(
          String.format(
              Locale.ROOT,
              "%s: depth %.4f mm, residual %+.4f mm",
              reading.master().name(),
              Length.mm(reading.depthNm()),
              fit.residualsMm().get(i)));
    }
    lines.add(
        String.format(
            Locale.ROOT,
            "span %.4f mm, standard uncertainty %.4f mm; chi-square %.2f with %d degrees of"
                + " freedom",
            fit.spanMm(),
            Math.sqrt(fit.covariance().get(0).get(0)),
            fit.chiSquared(),
            fit.degreesOfFreedom()));
    lines.addAll(fit.notes());
    lines.addAll(advice.sentences());
    return String.join(System.lineSeparator(), lines);
  }
}
