package org.chordlog.cli.station;

import java.util.Locale;
import org.chordlog.cli.common.JsonText;
import org.chordlog.measure.Decimals;
import org.chordlog.study.StraightLine;
import org.chordlog.verdict.Counted;

/**
 * A fitted line as it is published: its value at a place and its slope with standard uncertainties
 * and their correlation, and the residual standard deviation.
 */
record LineFit(
    double at,
    double value,
    double valueUncertainty,
    double slope,
    double slopeUncertainty,
    double correlation,
    double residualDeviation,
    int degreesOfFreedom) {
  static LineFit of(StraightLine line, double at) {
    return new LineFit(
        at,
        line.at(at),
        line.deviationAt(at),
        line.slope(),
        line.slopeDeviation(),
        line.correlationAt(at),
        line.residualDeviation(),
        line.degreesOfFreedom());
  }

  String json() {
    return JsonText.of(this);
  }

  String text() {
    return Decimals.withMinus(said());
  }

  private String said() {
    return String.format(
        Locale.ROOT,
        "value at %.6g: %.7g, standard uncertainty %.3g%n"
            + "slope %.7g, standard uncertainty %.3g%n"
            + "correlation %.3f, residual standard deviation %.3g with %s of freedom",
        at,
        value,
        valueUncertainty,
        slope,
        slopeUncertainty,
        correlation,
        residualDeviation,
        Counted.of(degreesOfFreedom, "degree"));
  }
}
