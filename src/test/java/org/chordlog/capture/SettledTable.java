package org.chordlog.capture;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import org.chordlog.measure.CaptureMode;
import org.chordlog.measure.Indicator;

/** Pieces set down to rest, under vibration, short rests, coarse steps: as a table. */
final class SettledTable {
  /** How it is played. */
  record Scene(
      String name,
      double rateHz,
      double stepMm,
      double restSeconds,
      double vibrationMm,
      double spikeShare) {}

  /** What came of so many pieces; errors in µm. */
  record Row(
      Scene scene,
      int pieces,
      int read,
      double meanUm,
      double worstUm,
      double scatterUm,
      Map<String, Integer> others) {
    @Override
    public String toString() {
      return String.format(
          Locale.ROOT,
          "| %s | %.0f | %.3f | %.1f | %.0f | %d of %d | %+.2f | %.1f | %.1f | %s |",
          scene.name,
          scene.rateHz,
          scene.stepMm,
          scene.restSeconds,
          1000 * scene.vibrationMm,
          read,
          pieces,
          meanUm,
          worstUm,
          scatterUm,
          others);
    }
  }

  private SettledTable() {}

  static Row row(Scene scene, int pieces, long seed) {
    return row(scene, new Indicator(scene.stepMm, 0.003, 12.7), 0, pieces, seed);
  }

  /** Where the tolerance of a job permits means of that standard error. */
  static Row row(Scene scene, Indicator indicator, long meanMayErrNm, int pieces, long seed) {
    Capture capture = Captures.of(CaptureOptions.of(CaptureMode.SETTLED).settings(indicator));
    capture.meanMayErrBy(meanMayErrNm);
    Play play = new Play(scene.rateHz, scene.stepMm, seed);
    play.vibration(scene.vibrationMm).spikes(scene.spikeShare).hold(2 + 8 / scene.rateHz);
    List<Double> errors = new ArrayList<>();
    List<Double> scatters = new ArrayList<>();
    Map<String, Integer> others = new TreeMap<>();
    int fed = 0;
    for (int i = 0; i < pieces; i++) {
      double truth = 5 + 0.05 * (2 * play.random().nextDouble() - 1);
      play.touch(truth, scene.restSeconds);
      for (; fed < play.samples().size(); fed++) {
        capture.offer(
            play.samples().get(fed),
            outcome -> {
              if (outcome instanceof CaptureOutcome.Captured captured) {
                errors.add((captured.depth().valueNm() - truth * 1e6) / 1e3);
                scatters.add(captured.depth().scatterNm() / 1e3);
              } else {
                others.merge(named(outcome), 1, Integer::sum);
              }
            });
      }
    }
    return new Row(
        scene,
        pieces,
        errors.size(),
        mean(errors),
        errors.stream().mapToDouble(Math::abs).max().orElse(Double.NaN),
        mean(scatters),
        others);
  }

  static String named(CaptureOutcome outcome) {
    return outcome instanceof CaptureOutcome.Rejected refused
        ? refused.reason().name()
        : outcome.getClass().getSimpleName();
  }

  private static double mean(List<Double> values) {
    return values.stream().mapToDouble(v -> v).average().orElse(Double.NaN);
  }

  static List<Scene> scenes() {
    return List.of(
        new Scene("quiet", 100, 0.001, 1.2, 0, 0),
        new Scene("quiet", 20, 0.001, 1.2, 0, 0),
        new Scene("quiet", 10, 0.001, 1.2, 0, 0),
        new Scene("quiet", 4, 0.001, 3, 0, 0),
        new Scene("quiet", 1, 0.001, 9, 0, 0),
        new Scene("coarse", 50, 0.01, 1.2, 0, 0),
        new Scene("spikes 1 %", 100, 0.001, 1.2, 0, 0.01),
        new Scene("spikes 1 %", 10, 0.001, 1.5, 0, 0.01),
        new Scene("short", 10, 0.001, 0.7, 0, 0),
        new Scene("short", 50, 0.001, 0.7, 0, 0),
        new Scene("too short", 50, 0.001, 0.3, 0, 0),
        new Scene("slow", 1, 0.001, 4, 0, 0),
        new Scene("vibration", 100, 0.001, 1.5, 0.004, 0),
        new Scene("vibration", 100, 0.001, 1.5, 0.010, 0),
        new Scene("vibration", 50, 0.001, 1.5, 0.010, 0),
        new Scene("vibration", 20, 0.001, 2, 0.010, 0),
        new Scene("vibration", 10, 0.001, 2, 0.010, 0),
        new Scene("vibration", 100, 0.001, 1.5, 0.030, 0));
  }

  /** Prints the table; the argument is the count of pieces a row. */
  public static void main(String[] arguments) {
    int pieces = arguments.length == 0 ? 200 : Integer.parseInt(arguments[0]);
    System.out.println(
        "| scene | values/s | step mm | rest s | vibration µm | read | mean µm | worst µm | scatter"
            + " µm | else |");
    System.out.println("|---|---|---|---|---|---|---|---|---|---|");
    scenes().forEach(scene -> System.out.println(row(scene, pieces, 20261125)));
  }
}
