package org.chordlog.cli.gauge;

import java.util.ArrayList;
import java.util.List;
import org.chordlog.cli.common.LengthOptions;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Bridge;
import org.chordlog.measure.Length;
import org.chordlog.measure.Quantity;
import org.chordlog.measure.RadiusEstimate;
import org.chordlog.radius.RadiusModel;
import org.chordlog.report.DepthCard;

/** The rows of a depth-to-radius card: even steps of depth between two radii. */
record RadiusCard(RadiusModel model, LengthOptions lengths, String section) {
  private static final int MOST_ROWS = 240;
  private static final double[] NICE = {1, 2, 5};

  DepthCard card(double fromMm, double toMm) {
    String unit = lengths.sign();
    return new DepthCard(
        "Depth to radius",
        facts(),
        List.of("depth " + unit, "radius " + unit, "− " + unit, "+ " + unit),
        rows(fromMm, toMm),
        List.of(
            "− and + are how far down and up the radius may be (at least 95.45 %), of a single"
                + " reading with a fresh zero.",
            "Measure only with the rollers stopped and the drive locked out; the machine's manual"
                + " and local rules come first."));
  }

  private List<String> facts() {
    Bridge bridge = model.setUp().bridge();
    String feet = bridge.footRadiusMm() == 0 ? "edges" : size(bridge.footRadiusMm());
    return List.of(
        "Bridge: span " + size(bridge.spanMm()) + ", foot radius " + feet,
        "Bridge stands on the "
            + model.setUp().measuredFace().words()
            + "; radius of the "
            + model.setUp().specifiedFace().words()
            + "; section "
            + section);
  }

  private String size(double mm) {
    return lengths.lengths().text(Quantity.stated(mm));
  }

  /** Depth, radius and both sides of U, from the tightest to the slackest. */
  List<List<String>> rows(double fromMm, double toMm) {
    if (!(fromMm > 0 && fromMm < toMm)) {
      throw new BadInput("--from", fromMm, "is not below --to", "0 < --from < --to");
    }
    double first = model.depthForMm(fromMm);
    double last = model.depthForMm(toMm);
    double sign = Math.signum(first);
    double step = step(Math.abs(first - last));
    List<List<String>> rows = new ArrayList<>();
    for (long i = (long) Math.floor(Math.abs(first) / step + 1e-9);
        i * step >= Math.abs(last) - 1e-9;
        i--) {
      rows.add(row(sign * i * step));
    }
    return rows;
  }

  private List<String> row(double depthMm) {
    RadiusEstimate e = model.estimate(Length.nm(depthMm), 0, 1);
    Double radius = e.radiusMm();
    Double upper = e.upperMm();
    String depth = lengths.text(depthMm, 3);
    if (radius == null) {
      return List.of(depth, "flat", "", "");
    }
    double expanded = RadiusText.expandedMm(e);
    return List.of(
        depth,
        lengths.byUncertainty(radius, expanded),
        lengths.byUncertainty(radius - e.lowerMm(), expanded),
        upper == null ? "open" : lengths.byUncertainty(upper - radius, expanded));
  }

  /**
   * The finest of 1, 2, 5 × 10ⁿ of the card's unit, not below the indicator's step, that fits the
   * rows; mm.
   */
  private double step(double range) {
    double leastMm = Math.max(range / MOST_ROWS, model.setUp().indicator().resolutionMm());
    return nice(leastMm / lengths.unitMm()) * lengths.unitMm();
  }

  private static double nice(double least) {
    double decade = Math.pow(10, Math.floor(Math.log10(least)) - 1);
    while (true) {
      for (double nice : NICE) {
        if (nice * decade >= least * (1 - 1e-9)) {
          return nice * decade;
        }
      }
      decade *= 10;
    }
  }
}
