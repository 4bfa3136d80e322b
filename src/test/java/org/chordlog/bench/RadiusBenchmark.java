package org.chordlog.bench;

import java.util.concurrent.TimeUnit;
import org.chordlog.measure.Bridge;
import org.chordlog.measure.Face;
import org.chordlog.measure.Indicator;
import org.chordlog.measure.RadiusEstimate;
import org.chordlog.measure.Recorded;
import org.chordlog.measure.Section;
import org.chordlog.measure.SetUp;
import org.chordlog.measure.Zero;
import org.chordlog.radius.Chord;
import org.chordlog.radius.RadiusModel;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** Depth to radius with uncertainty, against the bare geometry, one thread. */
@State(Scope.Thread)
@BenchmarkMode(Mode.Throughput)
@OutputTimeUnit(TimeUnit.SECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
public class RadiusBenchmark {
  private final RadiusModel model = RadiusModel.of(setUp());
  private long depthNm = 1_000_000;

  private static SetUp setUp() {
    Bridge bridge = new Bridge(1, "B", new Bridge.Span(200, 0.02), new Bridge.Feet(5, 0.005), 0.5);
    Zero zero = new Zero(1, "s", 1, 0, 2000, 20, new Recorded(0, "me"));
    Section tube = new Section.RoundTube(50, 3);
    Indicator indicator = new Indicator(0.01, 0.02, 25);
    return new SetUp(bridge, indicator, zero, null, tube, Face.OUTER, Face.CENTRELINE);
  }

  private long next() {
    depthNm = depthNm >= 20_000_000 ? 1_000_000 : depthNm + 7_919;
    return depthNm;
  }

  @Benchmark
  public double curvatureOnly() {
    return Chord.curvaturePerMm(next() / 1e6, 200, 5);
  }

  @Benchmark
  public RadiusEstimate estimate() {
    return model.estimate(next(), 3000, 15);
  }
}
