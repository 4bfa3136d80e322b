package org.chordlog.cli.station;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.chordlog.cli.common.CsvColumns;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Bridge;
import org.chordlog.measure.Check;
import org.chordlog.measure.Face;
import org.chordlog.measure.Indicator;
import org.chordlog.measure.Length;
import org.chordlog.measure.Master;
import org.chordlog.radius.CalibrationAdvice;
import org.chordlog.radius.CalibrationFit;
import org.chordlog.radius.MasterReading;
import org.chordlog.study.Line;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** Readings on masters from a file, without a service; all lengths in mm. */
final class MasterFile {
  @Option(
      names = "--csv",
      paramLabel = "FILE",
      description = {
        "Fit readings from this file instead: columns radius and depth, mm, concave negative;",
        "uncertainty (of the radius, k = 2), scatter, samples and master may follow."
      })
  private @Nullable Path file;

  @Option(
      names = "--line",
      description = "With --csv: a straight line through columns x and y instead of a chord.")
  private boolean line;

  @Option(
      names = "--line-at",
      paramLabel = "X",
      defaultValue = "0",
      description = "With --line: where its value is told (${DEFAULT-VALUE}).")
  private double lineAt;

  @Option(names = "--span", paramLabel = "MM", description = "Stated span of the bridge.")
  private @Nullable Double spanMm;

  @Option(
      names = "--span-uncertainty",
      paramLabel = "MM",
      defaultValue = "0",
      description = "Its standard uncertainty (${DEFAULT-VALUE}).")
  private double spanUncertaintyMm;

  @Option(
      names = "--foot-radius",
      paramLabel = "MM",
      defaultValue = "0",
      description = "Radius of the feet (${DEFAULT-VALUE}: edges).")
  private double footRadiusMm;

  @Option(
      names = "--foot-radius-uncertainty",
      paramLabel = "MM",
      defaultValue = "0",
      description = "Its standard uncertainty (${DEFAULT-VALUE}).")
  private double footRadiusUncertaintyMm;

  @Option(
      names = "--resolution",
      paramLabel = "MM",
      defaultValue = "0.001",
      description = "Step of the indicator (${DEFAULT-VALUE}).")
  private double resolutionMm;

  @Option(
      names = "--permissible-error",
      paramLabel = "MM",
      defaultValue = "0.003",
      description = "Its permissible error, ± (${DEFAULT-VALUE}).")
  private double permissibleErrorMm;

  @Option(
      names = "--at",
      paramLabel = "MM",
      description = "Radius that the advice is for, concave negative (the middle master's).")
  private @Nullable Double atMm;

  boolean given() {
    return file != null;
  }

  /** A line or a chord, as text or JSON. */
  String fit(boolean json) {
    if (file == null) {
      throw new BadInput("--csv", "nothing", "was given", "a file with readings on masters");
    }
    MasterTable table = new MasterTable(CsvColumns.read(file));
    if (line) {
      LineFit fit = LineFit.of(Line.of(table.numbers("x"), table.numbers("y")), lineAt);
      return json ? fit.json() : fit.text();
    }
    List<MasterReading> readings = readings(table);
    Bridge bridge = bridge();
    Indicator indicator = new Indicator(resolutionMm, permissibleErrorMm, bridge.spanMm());
    CalibrationFit fit = CalibrationFit.of(bridge, indicator, null, readings);
    double at = atMm == null ? middle(readings) : atMm;
    CalibrationAdvice advice =
        CalibrationAdvice.of(
            bridge, indicator, null, readings, at < 0 ? Face.INNER : Face.OUTER, Math.abs(at));
    MasterFit answer = new MasterFit(readings, fit, advice);
    return json ? answer.json() : answer.text();
  }

  private Bridge bridge() {
    if (spanMm == null) {
      throw new BadInput("--span", "nothing", "was given", "the stated span in mm");
    }
    return new Bridge(
        0,
        String.format(Locale.ROOT, "span %.1f", spanMm),
        new Bridge.Span(spanMm, spanUncertaintyMm),
        new Bridge.Feet(footRadiusMm, footRadiusUncertaintyMm),
        0);
  }

  private static List<MasterReading> readings(MasterTable table) {
    List<MasterReading> readings = new ArrayList<>();
    for (int row = 0; row < table.rows(); row++) {
      readings.add(reading(table, row));
    }
    return readings;
  }

  private static MasterReading reading(MasterTable table, int row) {
    double radiusMm = table.number(row, "radius");
    double depthMm = table.number(row, "depth");
    if (radiusMm < 0 != depthMm < 0) {
      String allowed = "both positive on a convex master, both negative on a concave one";
      throw new BadInput(table.place(row, "depth"), depthMm, "has not the radius's sign", allowed);
    }
    Master master =
        new Master(
            0,
            table.text(row, "master", String.format(Locale.ROOT, "R %.3f", radiusMm)),
            radiusMm < 0 ? Face.INNER : Face.OUTER,
            Math.abs(radiusMm),
            table.number(row, "uncertainty", 0));
    double samples =
        Check.within(table.place(row, "samples"), table.number(row, "samples", 1), 1, 1e9);
    return new MasterReading(
        master,
        Length.nm(depthMm),
        Length.nm(Check.notNegative(table.place(row, "scatter"), table.number(row, "scatter", 0))),
        (int) samples);
  }

  private static double middle(List<MasterReading> readings) {
    List<Double> radii =
        readings.stream()
            .map(r -> (r.master().face() == Face.INNER ? -1 : 1) * r.master().radiusMm())
            .sorted()
            .toList();
    return radii.get(radii.size() / 2);
  }
}
