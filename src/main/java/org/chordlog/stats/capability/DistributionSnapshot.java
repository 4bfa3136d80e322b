package org.chordlog.stats.capability;

import java.util.List;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Check;
import org.chordlog.stats.control.Axis;
import org.chordlog.stats.control.Limits;
import org.jspecify.annotations.Nullable;

/**
 * Values in classes, with fitted curves and limits: what the capability picture shows. Curves give
 * the density per unit of the quantity, the first one being the one that the indices rest on.
 */
public record DistributionSnapshot(
    Axis axis,
    List<Bin> bins,
    List<Curve> curves,
    Limits specification,
    @Nullable Double mean,
    long count) {
  /** Values from {@code low} (included) up to {@code high}. */
  public record Bin(double low, double high, long count) {
    public Bin {
      Check.finite("low", low);
      if (!(Check.finite("high", high) > low)) {
        throw new BadInput("high", high, "is not above low", "above " + low);
      }
    }
  }

  /** A fitted distribution by name, for example "normal, overall". */
  public record Curve(String name, List<Density> densities) {
    public Curve {
      densities = List.copyOf(densities);
    }
  }

  /** Density per unit at a value. */
  public record Density(double value, double density) {}

  public DistributionSnapshot {
    bins = List.copyOf(bins);
    curves = List.copyOf(curves);
  }

  public String quantity() {
    return axis.quantity();
  }

  public String unit() {
    return axis.unit();
  }

  public @Nullable Double lowerSpecificationLimit() {
    return specification.lower();
  }

  public @Nullable Double upperSpecificationLimit() {
    return specification.upper();
  }

  public @Nullable Double target() {
    return specification.target();
  }
}
