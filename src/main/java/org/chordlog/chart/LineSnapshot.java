package org.chordlog.chart;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What pictures of a gauge in a line show, lengths in {@code unit}: profiles along pieces; how
 * strongly they wave at each wavelength; the evidence of each roller's ripple from piece to piece.
 */
public record LineSnapshot(
    String unit, @Nullable Profiles profiles, @Nullable Spectrum spectrum, List<Ripple> ripples) {
  public LineSnapshot {
    ripples = List.copyOf(ripples);
  }

  /** Pieces, the newest first, with the specification's target and limits on the same face. */
  public record Profiles(
      List<Trace> traces, double target, @Nullable Double lowerLimit, @Nullable Double upperLimit) {
    public Profiles {
      traces = List.copyOf(traces);
    }

    Profiles in(ViewUnit unit) {
      return new Profiles(
          traces.stream().map(each -> each.in(unit)).toList(),
          unit.of(target),
          unit.orNull(lowerLimit),
          unit.orNull(upperLimit));
    }
  }

  /**
   * The radius along one piece; {@code evaluated} holds the places with their uncertainty between
   * which it was evaluated, none while it still runs through.
   */
  public record Trace(String name, List<Spot> spots, List<Place> evaluated) {
    public Trace {
      spots = List.copyOf(spots);
      evaluated = List.copyOf(evaluated);
    }

    Trace in(ViewUnit unit) {
      return new Trace(
          name,
          spots.stream()
              .map(each -> new Spot(unit.of(each.along()), unit.of(each.radius())))
              .toList(),
          evaluated.stream().map(each -> each.in(unit)).toList());
    }
  }

  /** A radius at a place; infinite where it is straight. */
  public record Spot(double along, double radius) {}

  /** A local radius with its interval. */
  public record Place(double along, double radius, double lower, @Nullable Double upper) {
    Place in(ViewUnit unit) {
      return new Place(unit.of(along), unit.of(radius), unit.of(lower), unit.orNull(upper));
    }
  }

  /** Amplitudes in percent of curvature, and the bands in which rollers would show. */
  public record Spectrum(int pieces, List<Wave> waves, List<RollerBand> bands) {
    public Spectrum {
      waves = List.copyOf(waves);
      bands = List.copyOf(bands);
    }

    Spectrum in(ViewUnit unit) {
      return new Spectrum(
          pieces,
          waves.stream()
              .map(each -> new Wave(unit.of(each.wavelength()), each.amplitudePercent()))
              .toList(),
          bands.stream()
              .map(each -> new RollerBand(each.roller(), unit.of(each.from()), unit.of(each.to())))
              .toList());
    }
  }

  /** An amplitude at a wavelength. */
  public record Wave(double wavelength, double amplitudePercent) {}

  /** Wavelengths of a roller, slip allowed for. */
  public record RollerBand(String roller, double from, double to) {}

  /** Moving average of the evidence of a roller's ripple, oldest piece first, with its limit. */
  public record Ripple(
      String roller, List<Double> evidence, double limit, double amplitudePercent) {
    public Ripple {
      evidence = List.copyOf(evidence);
    }
  }

  LineSnapshot in(ViewUnit other) {
    return new LineSnapshot(
        other.symbol(),
        profiles == null ? null : profiles.in(other),
        spectrum == null ? null : spectrum.in(other),
        ripples);
  }
}
