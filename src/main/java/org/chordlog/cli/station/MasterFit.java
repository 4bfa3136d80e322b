package org.chordlog.cli.station;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.chordlog.cli.common.JsonText;
import org.chordlog.measure.Length;
import org.chordlog.measure.Lengths;
import org.chordlog.measure.Quantity;
import org.chordlog.measure.Sentence;
import org.chordlog.radius.CalibrationAdvice;
import org.chordlog.radius.CalibrationFit;
import org.chordlog.radius.MasterReading;
import org.chordlog.verdict.Counted;

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

  String text(Lengths lengths) {
    List<String> lines = new ArrayList<>();
    for (int i = 0; i < readings.size(); i++) {
      MasterReading reading = readings.get(i);
      lines.add(
          Sentence.of(
                  "%s: depth %s, residual %s",
                  reading.master().name(),
                  Quantity.stated(Length.mm(reading.depthNm())),
                  Quantity.uncertainty(fit.residualsMm().get(i)).withSign())
              .in(lengths));
    }
    double uncertainty = Math.sqrt(fit.covariance().get(0).get(0));
    lines.add(
        Sentence.of(
                "span %s, standard uncertainty %s; chi-square %.2f with %s of freedom",
                Quantity.of(fit.spanMm(), 2 * uncertainty),
                Quantity.uncertainty(uncertainty),
                fit.chiSquared(),
                Counted.of(fit.degreesOfFreedom(), "degree"))
            .in(lengths));
    fit.notes().forEach(each -> lines.add(each.in(lengths)));
    advice.sentences().forEach(each -> lines.add(each.in(lengths)));
    return String.join(System.lineSeparator(), lines);
  }
}
