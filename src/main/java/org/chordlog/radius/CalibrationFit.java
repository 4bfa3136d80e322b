package org.chordlog.radius;

import java.util.List;
import java.util.stream.IntStream;
import org.apache.commons.math3.linear.RealMatrix;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Bridge;
import org.chordlog.measure.Calibration;
import org.chordlog.measure.Indicator;
import org.chordlog.measure.Quantity;
import org.chordlog.measure.Recorded;
import org.chordlog.measure.Sentence;
import org.chordlog.measure.Zero;
import org.jspecify.annotations.Nullable;

/**
 * Effective span, zero offset and foot radius of a bridge from readings on masters, by generalised
 * least squares in depth. {@code covariance} is in mm² over span, zero offset, foot radius;
 * residuals are observed less fitted depth, mm; {@code probability} is that of a χ² this large by
 * chance; {@code notes} say in plain words what the masters could not tell.
 */
public record CalibrationFit(
    double spanMm,
    double zeroOffsetMm,
    double footRadiusMm,
    List<List<Double>> covariance,
    List<Double> residualsMm,
    double chiSquared,
    int degreesOfFreedom,
    double probability,
    boolean fits,
    List<Sentence> notes) {
  /** Verdict "does not fit" below this probability. */
  public static final double LEAST_PROBABILITY = 0.05;

  /** A span further from the nominal one than this share means a wrong master or bridge. */
  private static final double MOST_CHANGE = 0.1;

  public CalibrationFit {
    covariance = covariance.stream().map(List::copyOf).toList();
    residualsMm = List.copyOf(residualsMm);
    notes = List.copyOf(notes);
  }

  /**
   * The zero offset is fitted where the masters can tell it from the span; the foot radius is
   * fitted with its stated uncertainty as prior knowledge. {@link BadInput} when the readings can't
   * determine the span.
   */
  public static CalibrationFit of(
      Bridge bridge, Indicator indicator, @Nullable Zero zero, List<MasterReading> readings) {
    if (readings.isEmpty()) {
      throw new BadInput("readings", 0, "can't determine the span", "one or more masters");
    }
    MasterProblem problem = new MasterProblem(bridge, indicator, zero, readings);
    MasterProblem.Outcome outcome = problem.solve();
    checkSpan(bridge, outcome.span());
    return from(outcome, readings.size());
  }

  /** The record to keep; a time after {@code nowMicros} is refused. */
  public Calibration record(
      String station,
      long bridgeId,
      long takenAtMicros,
      long dueAtMicros,
      long nowMicros,
      String takenBy) {
    if (takenAtMicros > nowMicros) {
      throw new BadInput("takenAtMicros", takenAtMicros, "is in the future", "up to " + nowMicros);
    }
    double degrees = fits ? StudentT.MOST_DEGREES : degreesOfFreedom;
    return new Calibration(
        0,
        station,
        bridgeId,
        new Calibration.Fitted(spanMm, zeroOffsetMm, footRadiusMm, covariance, degrees),
        new Recorded(takenAtMicros, takenBy),
        dueAtMicros,
        remarks());
  }

  private static CalibrationFit from(MasterProblem.Outcome outcome, int readings) {
    WeightedFit fit = outcome.fit();
    boolean fits = fit.probability() >= LEAST_PROBABILITY;
    double scale = fits ? 1 : fit.chiSquared() / fit.degreesOfFreedom();
    return new CalibrationFit(
        outcome.span(),
        outcome.zeroOffset(),
        outcome.footRadius(),
        rows(outcome.covariance().scalarMultiply(scale)),
        IntStream.range(0, readings).mapToObj(i -> fit.residuals().getEntry(i)).toList(),
        fit.chiSquared(),
        fit.degreesOfFreedom(),
        fit.probability(),
        fits,
        CalibrationNotes.of(outcome, fits));
  }

  private static void checkSpan(Bridge bridge, double spanMm) {
    if (Math.abs(spanMm / bridge.spanMm() - 1) > MOST_CHANGE) {
      Sentence allowed = Sentence.of("within 10 %% of %s", Quantity.stated(bridge.spanMm()));
      throw new BadInput("spanMm", spanMm, "is far from the bridge's: wrong master?", allowed);
    }
  }

  private static List<List<Double>> rows(RealMatrix matrix) {
    return IntStream.range(0, 3)
        .mapToObj(i -> IntStream.range(0, 3).mapToObj(j -> matrix.getEntry(i, j)).toList())
        .toList();
  }

  /** What goes into the record in words; lengths are there as figures. */
  private String remarks() {
    return Sentence.joined(" ", notes.stream().filter(each -> !each.hasLength()).toList())
        .toString();
  }
}
