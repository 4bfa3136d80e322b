package org.chordlog.study;

import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.chordlog.measure.Check;
import org.chordlog.study.VarianceComponents.Component;

/**
 * Contributions to the uncertainty of the measuring system (MS) and process (MP), each a variance
 * in the study's unit squared, summed after ISO 22514-7 (from memory): u_MS² = CAL + max(EVR, RE) +
 * BI + LIN + REST, or MPE in place of all; u_MP² = CAL + max(EVR, EVO, RE) + BI + LIN + AV + IA +
 * GV + STAB + T + OBJ + REST. Immutable.
 */
public final class MeasuringProcess {
  /** A uniform error within ± a has the standard deviation a/√3. */
  private static final double UNIFORM = Math.sqrt(3);

  private final Map<Contribution, Part> parts;

  /** A variance with how mean squares estimate it. */
  record Part(Combination combination, double variance) {
    static Part of(Contribution of, double u, double degreesOfFreedom) {
      MeanSquare square = new MeanSquare("u_" + of, u * u, degreesOfFreedom);
      return new Part(Combination.of(square), u * u);
    }

    Part plus(Part other) {
      return new Part(combination.plus(other.combination), variance + other.variance);
    }
  }

  private static final Part NOTHING = new Part(Combination.NONE, 0);

  private MeasuringProcess(Map<Contribution, Part> parts) {
    this.parts = parts;
  }

  /** Nothing known yet. */
  public static MeasuringProcess empty() {
    return new MeasuringProcess(new EnumMap<>(Contribution.class));
  }

  /** A standard uncertainty with its degrees of freedom, infinite where it is stated. */
  public MeasuringProcess with(Contribution of, double u, double degreesOfFreedom) {
    return with(of, Part.of(of, Check.notNegative("u_" + of, u), degreesOfFreedom));
  }

  private MeasuringProcess with(Contribution of, Part part) {
    Map<Contribution, Part> more = new EnumMap<>(Contribution.class);
    more.putAll(parts);
    more.put(of, part);
    return new MeasuringProcess(more);
  }

  /** From the step of the indicator: step/√12. */
  public MeasuringProcess withResolution(double step) {
    return stated(Contribution.RE, step / Math.sqrt(12));
  }

  /** From the master's expanded uncertainty (k = 2). */
  public MeasuringProcess withCalibration(double expandedUncertainty) {
    return stated(Contribution.CAL, expandedUncertainty / 2);
  }

  /** The same with a known bias. */
  public MeasuringProcess withBias(double bias) {
    return stated(Contribution.BI, Math.abs(bias) / UNIFORM);
  }

  /** From the largest bias of a linearity study. */
  public MeasuringProcess withLinearity(double largestBias) {
    return stated(Contribution.LIN, Math.abs(largestBias) / UNIFORM);
  }

  /** The same with the indicator's permissible error. */
  public MeasuringProcess withPermissibleError(double permissibleError) {
    return stated(Contribution.MPE, permissibleError / UNIFORM);
  }

  private MeasuringProcess stated(Contribution of, double u) {
    return with(of, u, Double.POSITIVE_INFINITY);
  }

  /** Repeatability, operators and interactions of a study on pieces, sharing its mean squares. */
  public MeasuringProcess with(VarianceComponents study) {
    MeasuringProcess more = this;
    more = more.with(Contribution.EVO, part(study, List.of(Source.REPEATABILITY)));
    more = more.with(Contribution.AV, part(study, List.of(Source.OPERATOR)));
    return more.with(
        Contribution.IA, part(study, List.of(Source.INTERACTION, Source.PLACE_INTERACTION)));
  }

  private static Part part(VarianceComponents study, List<Source> sources) {
    List<Component> found = study.where(sources::contains);
    return new Part(VarianceComponents.sum(found), VarianceComponents.variance(found));
  }

  Map<Contribution, Part> parts() {
    return parts;
  }

  Part system() {
    return has(Contribution.MPE)
        ? part(Contribution.MPE)
        : sum(Contribution.CAL, Contribution.BI, Contribution.LIN, Contribution.REST)
            .plus(largest(Contribution.EVR, Contribution.RE));
  }

  Part process() {
    Part own =
        has(Contribution.MPE)
            ? part(Contribution.MPE).plus(part(Contribution.REST)).plus(part(Contribution.EVO))
            : sum(Contribution.CAL, Contribution.BI, Contribution.LIN, Contribution.REST)
                .plus(largest(Contribution.EVR, Contribution.EVO, Contribution.RE));
    return own.plus(
        sum(
            Contribution.AV,
            Contribution.IA,
            Contribution.GV,
            Contribution.STAB,
            Contribution.T,
            Contribution.OBJ));
  }

  private boolean has(Contribution of) {
    return parts.containsKey(of);
  }

  private Part part(Contribution of) {
    return parts.getOrDefault(of, NOTHING);
  }

  private Part sum(Contribution... wanted) {
    return Stream.of(wanted).map(this::part).reduce(NOTHING, Part::plus);
  }

  private Part largest(Contribution... wanted) {
    Optional<Part> largest =
        Stream.of(wanted).map(this::part).max(Comparator.comparingDouble(Part::variance));
    return largest.orElse(NOTHING);
  }
}
