package org.chordlog.chart;

import java.util.List;
import org.chordlog.measure.BadInput;
import org.jspecify.annotations.Nullable;

/**
 * What the pictures of a study show, lengths in {@code unit}: cells operator by operator, on pieces
 * or over days, each at what {@code spot} calls it; components of the scatter, where operators,
 * pieces or days were compared; the bias, on masters; the radius of the {@code master} that was
 * followed over days, whose days should all be alike.
 */
public record StudySnapshot(
    String unit,
    String spot,
    List<Cell> cells,
    List<Component> components,
    @Nullable Bias bias,
    @Nullable Double master) {
  public StudySnapshot {
    cells = List.copyOf(cells);
    components = List.copyOf(components);
  }

  /** Repeats of one operator at one spot: a piece, a marked place on it, a lot, a day. */
  public record Cell(String operator, String spot, List<Double> values) {
    public Cell {
      values = List.copyOf(values);
      if (values.isEmpty()) {
        throw new BadInput("values", "none", "were measured", "one or more");
      }
    }

    double mean() {
      return values.stream().mapToDouble(each -> each).average().orElseThrow();
    }

    Cell in(ViewUnit unit) {
      return new Cell(operator, spot, values.stream().map(unit::of).toList());
    }
  }

  /** A standard deviation with its 95 % interval; an end that is null is open. */
  public record Component(
      String symbol, String words, double value, @Nullable Double lower, @Nullable Double upper) {
    Component in(ViewUnit unit) {
      return new Component(symbol, words, unit.of(value), unit.orNull(lower), unit.orNull(upper));
    }
  }

  /**
   * Reading less master, and the fit with its 95 % band. {@code overDepth}: along is the depth that
   * the master asks for, in the unit; else the count of the measurement.
   */
  public record Bias(boolean overDepth, List<Point> points, List<Fit> fits) {
    public Bias {
      points = List.copyOf(points);
      fits = List.copyOf(fits);
    }

    Bias in(ViewUnit unit) {
      ViewUnit along = overDepth ? unit : ViewUnit.MM;
      return new Bias(
          overDepth,
          points.stream()
              .map(each -> new Point(along.of(each.along()), each.master(), unit.of(each.bias())))
              .toList(),
          fits.stream().map(each -> each.in(along, unit)).toList());
    }
  }

  /** One measurement. */
  public record Point(double along, String master, double bias) {}

  /** The fitted bias at one place with its band. */
  public record Fit(double along, double bias, double lower, double upper) {
    Fit in(ViewUnit ofAlong, ViewUnit unit) {
      return new Fit(ofAlong.of(along), unit.of(bias), unit.of(lower), unit.of(upper));
    }
  }

  StudySnapshot in(ViewUnit other) {
    return new StudySnapshot(
        other.symbol(),
        spot,
        cells.stream().map(each -> each.in(other)).toList(),
        components.stream().map(each -> each.in(other)).toList(),
        bias == null ? null : bias.in(other),
        other.orNull(master));
  }
}
