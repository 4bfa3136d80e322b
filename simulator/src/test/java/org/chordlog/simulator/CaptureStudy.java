package org.chordlog.simulator;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.apache.commons.math3.stat.descriptive.SummaryStatistics;
import org.chordlog.capture.Capture;
import org.chordlog.capture.CaptureOptions;
import org.chordlog.capture.CaptureOutcome;
import org.chordlog.capture.CaptureOutcome.Captured;
import org.chordlog.capture.Captures;
import org.chordlog.measure.CaptureMode;
import org.chordlog.measure.Face;
import org.chordlog.measure.Sample;
import org.chordlog.simulator.Scenario.Gauge;
import org.chordlog.simulator.Scenario.Hand;

/** Captures judged against the simulator's truth, in invented time. */
final class CaptureStudy {
  private static final double SHOWS_ON_FLAT = 0.417;

  /** Ways of handling the bridge, the pace fitted to how often the indicator sends. */
  enum Handling {
    STEADY(0.9, 0.5, 0.25, 0.02, 0.005),
    QUICK(0.5, 0.25, 0.2, 0.05, 0.002),
    ROUGH(0.8, 1.6, 0.6, 0.2, 0.03);

    private final double airSeconds;
    private final double rockSeconds;
    private final double rockMm;
    private final double ringMm;
    private final double settleMm;

    Handling(double airSeconds, double rockSeconds, double rockMm, double ringMm, double settleMm) {
      this.airSeconds = airSeconds;
      this.rockSeconds = rockSeconds;
      this.rockMm = rockMm;
      this.ringMm = ringMm;
      this.settleMm = settleMm;
    }

    Hand hand(CaptureMode mode, double rate) {
      boolean rocks = mode == CaptureMode.EXTREMUM;
      double swing = rocks ? Math.max(0.6, 12 / rate) : 0.45;
      return new Hand(
          0,
          airSeconds + 1 / rate,
          0.35,
          rocks ? 4 * swing : rockSeconds,
          swing,
          rockMm,
          ringMm,
          rocks ? 0.1 : 1.3 + 6 / rate,
          rocks ? 0 : settleMm,
          12,
          0,
          0.1);
    }
  }

  /** One row of the table. */
  record Row(
      CaptureMode mode,
      double rate,
      double noise,
      Handling handling,
      Face face,
      double step,
      int pieces,
      int once,
      int missed,
      int twice,
      double bias,
      double spread) {}

  private CaptureStudy() {}

  static Row run(
      CaptureMode mode,
      double rate,
      double noise,
      Handling handling,
      Face face,
      double step,
      int pieces,
      long seed)
      throws IOException {
    Scenario scenario = scenario(mode, rate, noise, handling, face, step);
    List<Contact> truth = new ArrayList<>();
    List<CaptureOutcome> outcomes = play(mode, scenario, pieces, seed, truth);
    int[] times = new int[pieces];
    SummaryStatistics errors = new SummaryStatistics();
    for (CaptureOutcome outcome : outcomes) {
      if (outcome instanceof Captured captured) {
        double seconds = captured.depth().monotonicNanos() / 1e9;
        int piece = pieceAt(truth, seconds);
        if (piece < pieces) {
          times[piece]++;
          double shown = captured.depth().valueNm() / 1e6 - SHOWS_ON_FLAT;
          errors.addValue((shown - truth.get(piece).seatedDepthMm()) / step);
        }
      }
    }
    return row(mode, rate, noise, handling, face, step, times, errors);
  }

  private static Row row(
      CaptureMode mode,
      double rate,
      double noise,
      Handling handling,
      Face face,
      double step,
      int[] times,
      SummaryStatistics errors) {
    int missed = (int) java.util.Arrays.stream(times).filter(n -> n == 0).count();
    int once = (int) java.util.Arrays.stream(times).filter(n -> n == 1).count();
    return new Row(
        mode,
        rate,
        noise,
        handling,
        face,
        step,
        times.length,
        once,
        missed,
        times.length - once - missed,
        errors.getMean(),
        errors.getStandardDeviation());
  }

  /** The last piece that was touched by then. */
  static int pieceAt(List<Contact> truth, double seconds) {
    int piece = 0;
    while (piece + 1 < truth.size() && truth.get(piece + 1).touchedSeconds() <= seconds) {
      piece++;
    }
    return piece;
  }

  /** Plays until one piece more was touched; adds to {@code truth}. */
  static List<CaptureOutcome> play(
      CaptureMode mode, Scenario scenario, int pieces, long seed, List<Contact> truth) {
    VirtualPlunger plunger =
        new VirtualPlunger(
            new VirtualMachine(scenario, seed),
            new VirtualOperator(scenario, seed + 1),
            false,
            truth::add);
    VirtualIndicator indicator = new VirtualIndicator(scenario.indicator(), seed + 2);
    Random random = new Random(seed + 3);
    Capture capture =
        Captures.of(CaptureOptions.of(mode).settings(scenario.indicator().indicator()));
    List<CaptureOutcome> outcomes = new ArrayList<>();
    double period = 1 / scenario.indicator().valuesPerSecond();
    long step = Math.round(scenario.indicator().resolutionMm() * 1e6);
    int pressed = 0;
    for (long i = 0; truth.size() <= pieces; i++) {
      double seconds = i * period;
      long value = step * indicator.steps(plunger.pushedInMm(seconds), seconds);
      long nanos = Math.round((seconds + 0.2 * period * random.nextDouble()) * 1e9);
      capture.offer(new Sample(i, nanos, nanos / 1000, value, 0, false), outcomes::add);
      if (mode == CaptureMode.TRIGGER && pressed < truth.size()) {
        Contact contact = truth.get(pressed);
        double press =
            contact.restToSeconds() - 0.3 * (contact.restToSeconds() - contact.restFromSeconds());
        if (seconds > press) {
          capture.trigger(nanos, outcomes::add);
          pressed++;
        }
      }
    }
    return outcomes;
  }

  private static Scenario scenario(
      CaptureMode mode, double rate, double noise, Handling handling, Face face, double step)
      throws IOException {
    Scenario demo = ScenarioFile.read(ScenarioFile.DEMO);
    Scenario.Order job = demo.job();
    return new Scenario(
        demo.name(),
        demo.seed(),
        new Scenario.Order(
            job.name(),
            job.part(),
            job.machine(),
            job.tube(),
            face,
            job.specifiedFace(),
            job.targetMm(),
            job.toleranceMm(),
            job.positions()),
        demo.bridge(),
        new Gauge(step, 2 * step, 12.5, 5, SHOWS_ON_FLAT, noise, rate, 0, "signed-mm-lines"),
        demo.machine(),
        demo.lots(),
        demo.corrections(),
        handling.hand(mode, rate),
        List.of());
  }
}
