package org.chordlog.cli.station;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.chordlog.cli.common.CsvColumns;
import org.chordlog.cli.common.CsvOptions;
import org.chordlog.cli.common.LengthOptions;
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
import org.chordlog.study.StraightLine;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Readings on masters from a file, without a service. */
final class MasterFile {
  @Option(
      names = "--csv",
      paramLabel = "FILE",
      description = {
        "Fit readings from this file instead: columns radius and depth, concave negative;",
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

  @Option(names = "--span", paramLabel = "L", description = "Stated span of the bridge.")
  private @Nullable String span;

  @Option(
      names = "--span-uncertainty",
      paramLabel = "L",
      defaultValue = "0",
      description = "Its standard uncertainty (${DEFAULT-VALUE}).")
  private String spanUncertainty;

  @Option(
      names = "--foot-radius",
      paramLabel = "L",
      defaultValue = "0",
      description = "Radius of the feet (${DEFAULT-VALUE}: edges).")
  private String footRadius;

  @Option(
      names = "--foot-radius-uncertainty",
      paramLabel = "L",
      defaultValue = "0",
      description = "Its standard uncertainty (${DEFAULT-VALUE}).")
  private String footRadiusUncertainty;

  @Option(
      names = "--resolution",
      paramLabel = "L",
      description = "Step of the indicator (0.001 mm).")
  private @Nullable String resolution;

  @Option(
      names = "--permissible-error",
      paramLabel = "L",
      description = "Its permissible error, ± (0.003 mm).")
  private @Nullable String permissibleError;

  @Option(
      names = "--at",
      paramLabel = "L",
      description = "Radius that the advice is for, concave negative (the middle master's).")
  private @Nullable String at;

  @Mixin private CsvOptions csv = new CsvOptions();

  boolean given() {
    return file != null;
  }

  /** A line or a chord, as text or JSON. */
  String fit(boolean json, LengthOptions lengths) {
    if (file == null) {
      throw new BadInput("--csv", "nothing", "was given", "a file with readings on masters");
    }
    MasterTable table = new MasterTable(CsvColumns.read("--csv", file, csv), lengths);
    if (line) {
      LineFit fit = LineFit.of(StraightLine.of(table.numbers("x"), table.numbers("y")), lineAt);
      return json ? fit.json() : fit.text();
    }
    List<MasterReading> readings = readings(table, lengths);
    Bridge bridge = bridge(lengths);
    Indicator indicator = indicator(lengths, bridge.spanMm());
    CalibrationFit fit = CalibrationFit.of(bridge, indicator, null, readings);
    double atMm = at == null ? middle(readings) : lengths.mm("--at", at);
    CalibrationAdvice advice =
        CalibrationAdvice.of(
            bridge, indicator, null, readings, atMm < 0 ? Face.INNER : Face.OUTER, Math.abs(atMm));
    MasterFit answer = new MasterFit(readings, fit, advice);
    return json ? answer.json() : answer.text(lengths.lengths());
  }

  private Indicator indicator(LengthOptions lengths, double rangeMm) {
    return new Indicator(
        lengths.mm("--resolution", resolution, 0.001),
        lengths.mm("--permissible-error", permissibleError, 0.003),
        rangeMm);
  }

  private Bridge bridge(LengthOptions lengths) {
    if (span == null) {
      throw new BadInput("--span", "nothing", "was given", "the stated span");
    }
    double spanMm = lengths.mm("--span", span);
    return new Bridge(
            0,
            String.format(Locale.ROOT, "span %.1f", spanMm),
            new Bridge.Span(spanMm, lengths.mm("--span-uncertainty", spanUncertainty)),
            new Bridge.Feet(
                lengths.mm("--foot-radius", footRadius),
                lengths.mm("--foot-radius-uncertainty", footRadiusUncertainty)),
            0)
        .possible();
  }

  private static List<MasterReading> readings(MasterTable table, LengthOptions lengths) {
    List<MasterReading> readings = new ArrayList<>();
    for (int row = 0; row < table.rows(); row++) {
      readings.add(reading(table, row, lengths));
    }
    return readings;
  }

  private static MasterReading reading(MasterTable table, int row, LengthOptions lengths) {
    double radiusMm = table.mm(row, "radius");
    double depthMm = table.mm(row, "depth");
    if (radiusMm < 0 != depthMm < 0) {
      String allowed = "both positive on a convex master, both negative on a concave one";
      throw new BadInput(table.place(row, "depth"), depthMm, "has not the radius's sign", allowed);
    }
    Master master =
        new Master(
            0,
            table.text(row, "master", "R " + lengths.stated(radiusMm)),
            radiusMm < 0 ? Face.INNER : Face.OUTER,
            Math.abs(radiusMm),
            table.mm(row, "uncertainty", 0));
    double samples =
        Check.within(table.place(row, "samples"), table.number(row, "samples", 1), 1, 1e9);
    return new MasterReading(
        master,
        Length.nm(depthMm),
        Length.nm(Check.notNegative(table.place(row, "scatter"), table.mm(row, "scatter", 0))),
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
