package org.chordlog.chart;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.chordlog.stats.PositionsSnapshot;
import org.chordlog.stats.capability.DistributionSnapshot;
import org.chordlog.stats.control.Axis;
import org.chordlog.stats.control.ChartKind;
import org.chordlog.stats.control.ChartSnapshot;
import org.chordlog.stats.control.Limits;
import org.chordlog.stats.drift.DriftSnapshot;

/** Invented snapshots of everything that is drawn. */
public final class Snapshots implements ChartSource {
  private static final double MEAN = 1800.8;
  private static final double SIGMA = 3.1;

  @Override
  public Optional<ChartSnapshot> chart(ChartKind kind) {
    return Optional.of(
        switch (kind) {
          case MEAN -> Charts.mean(40);
          case RANGE, STANDARD_DEVIATION, MOVING_RANGE -> Charts.control(kind, 40, 5, 1.2);
          case CUSUM -> Charts.cusum(40);
          case INDIVIDUALS, EWMA -> Charts.control(kind, 40, 1801, 2.2);
        });
  }

  @Override
  public Optional<DistributionSnapshot> distribution() {
    Random random = new Random(3);
    long[] counts = new long[24];
    for (int i = 0; i < 240; i++) {
      int bin = (int) Math.floor((MEAN + SIGMA * random.nextGaussian() - 1788) / 1.2) + 1;
      counts[Math.max(0, Math.min(23, bin))]++;
    }
    List<DistributionSnapshot.Bin> bins = new ArrayList<>();
    for (int i = 0; i < counts.length; i++) {
      double low = 1788 + 1.2 * (i - 1);
      bins.add(new DistributionSnapshot.Bin(low, low + 1.2, counts[i]));
    }
    List<DistributionSnapshot.Curve> curves =
        List.of(curve("normal, overall", SIGMA), curve("normal, within", SIGMA * 0.88));
    return Optional.of(
        new DistributionSnapshot(
            new Axis("radius", "mm"), bins, curves, new Limits(1788.0, 1812.0, 1800.0), MEAN, 240));
  }

  private static DistributionSnapshot.Curve curve(String name, double sigma) {
    List<DistributionSnapshot.Density> densities = new ArrayList<>();
    for (int i = 0; i <= 120; i++) {
      double x = MEAN + SIGMA * (i - 60) / 12.0;
      double z = (x - MEAN) / sigma;
      densities.add(
          new DistributionSnapshot.Density(
              x, Math.exp(-z * z / 2) / (sigma * Math.sqrt(2 * Math.PI))));
    }
    return new DistributionSnapshot.Curve(name, densities);
  }

  @Override
  public Optional<PositionsSnapshot> positions() {
    return Optional.of(
        new PositionsSnapshot(
            "radius",
            "mm",
            List.of(
                new PositionsSnapshot.Row("start", 80, 1803.1, 1802.4, 1803.8, 1796.2, 1811.0),
                new PositionsSnapshot.Row("middle", 80, 1800.2, 1799.6, 1800.8, 1793.9, 1806.7),
                new PositionsSnapshot.Row("end", 0, 0, null, null, 0, 0)),
            1788.0,
            1812.0,
            1800.0));
  }

  @Override
  public Optional<DriftSnapshot> drift() {
    Random random = new Random(5);
    List<DriftSnapshot.BlockMean> jobs = new ArrayList<>();
    List<DriftSnapshot.Trend> trend = new ArrayList<>();
    for (int i = 0; i < 24; i++) {
      double pieces = 60 + 110.0 * i;
      double deviation = 0.05 + 0.00022 * pieces + 0.08 * random.nextGaussian();
      jobs.add(
          new DriftSnapshot.BlockMean(
              i + 1, "job " + (i + 1), pieces, 0, deviation, deviation - 0.1, deviation + 0.1));
    }
    for (int i = 0; i <= 32; i++) {
      double pieces = 100.0 * i;
      double value = 0.05 + 0.00022 * pieces;
      double half = 0.06 + Math.abs(pieces - 1300) * 0.00006;
      trend.add(new DriftSnapshot.Trend(pieces, value, value - half, value + half));
    }
    return Optional.of(
        new DriftSnapshot(
            "rolls 1",
            "deviation of curvature",
            "%",
            jobs,
            trend,
            2600,
            -0.7,
            0.7,
            null,
            "creeping",
            List.of(
                new DriftSnapshot.Mark(0, DriftSnapshot.Mark.Kind.JOB, "Gutter ring"),
                new DriftSnapshot.Mark(
                    1_225, DriftSnapshot.Mark.Kind.CORRECTION, "25.58 to 25.67"))));
  }

  /** An invented run of a real filter: a set-up, corrections as advised, and a new lot. */
  @Override
  public Optional<CorrectionTrail> corrections() {
    return Optional.of(Trails.run(40));
  }

  @Override
  public Optional<LineSnapshot> line() {
    return Optional.of(LineSnapshots.threePieces());
  }

  @Override
  public Optional<StudySnapshot> study() {
    return Optional.of(StudySnapshots.everything());
  }
}
