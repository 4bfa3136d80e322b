package org.chordlog.capture;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.chordlog.measure.CaptureMode;
import org.chordlog.measure.Indicator;

/** Rocked pieces with stray values: what each extreme gives, as a table. */
final class RockedTable {
  static final double STEP_MM = 0.001;
  private static final Indicator INDICATOR = new Indicator(STEP_MM, 0.003, 12.7);

  /** One way of rocking. */
  record Scene(
      Extreme extreme,
      double rateHz,
      double rockHertz,
      double liftSeconds,
      double spikeShare,
      double wrongDigitShare) {}

  /** What came of so many pieces; errors in µm. */
  record Row(Scene scene, int pieces, int read, double meanUm, double worstUm, String refusals) {
    @Override
    public String toString() {
      return String.format(
          Locale.ROOT,
          "| %s | %.0f | %.1f | %.2f | %.1f %% | %.1f %% | %d of %d | %+.2f | %.1f | %s |",
          scene.extreme,
          scene.rateHz,
          scene.rockHertz,
          scene.liftSeconds,
          100 * scene.spikeShare,
          100 * scene.wrongDigitShare,
          read,
          pieces,
          meanUm,
          worstUm,
          refusals);
    }
  }

  private RockedTable() {}

  static Row row(Scene scene, int pieces, long seed) {
    CaptureSettings settings =
        new CaptureOptionsBuilder(CaptureMode.EXTREMUM)
            .extreme(scene.extreme)
            .build()
            .settings(INDICATOR);
    List<Double> errors = new ArrayList<>();
    List<String> refusals = new ArrayList<>();
    Play play = new Play(scene.rateHz, STEP_MM, seed);
    play.spikes(scene.spikeShare).wrongDigits(scene.wrongDigitShare);
    play.hold(1.5);
    Capture capture = Captures.of(settings);
    int fed = 0;
    for (int i = 0; i < pieces; i++) {
      double truth = 5 + 0.05 * (2 * play.random().nextDouble() - 1);
      double amplitude = scene.extreme == Extreme.HIGHEST ? -0.3 : 0.3;
      play.rock(truth, amplitude, scene.rockHertz, 0.5 + 3 / scene.rockHertz, scene.liftSeconds);
      for (; fed < play.samples().size(); fed++) {
        capture.offer(
            play.samples().get(fed),
            outcome -> {
              if (outcome instanceof CaptureOutcome.Captured captured) {
                errors.add((captured.depth().valueNm() - truth * 1e6) / 1e3);
              } else if (outcome instanceof CaptureOutcome.Rejected refused) {
                refusals.add(refused.reason() + " " + refused.detail());
              }
            });
      }
    }
    double mean = errors.stream().mapToDouble(e -> e).average().orElse(Double.NaN);
    double worst = errors.stream().mapToDouble(Math::abs).max().orElse(Double.NaN);
    return new Row(
        scene,
        pieces,
        errors.size(),
        mean,
        worst,
        String.valueOf(refusals.stream().distinct().toList()));
  }

  static List<Scene> scenes() {
    List<Scene> scenes = new ArrayList<>();
    for (Extreme extreme : Extreme.values()) {
      for (double lift : new double[] {0.02, 0.1, 0.3, 0.8}) {
        scenes.add(new Scene(extreme, 50, 0.8, lift, 0, 0));
      }
      for (double hertz : new double[] {0.4, 0.8, 1.5}) {
        scenes.add(new Scene(extreme, 50, hertz, 0.3, 0.005, 0.01));
      }
      scenes.add(new Scene(extreme, 10, 0.4, 0.3, 0, 0));
      scenes.add(new Scene(extreme, 10, 0.4, 0.8, 0.005, 0.01));
      scenes.add(new Scene(extreme, 100, 0.8, 0.3, 0.005, 0.01));
    }
    return scenes;
  }

  /** Prints the table; the argument is the count of pieces a row. */
  public static void main(String[] arguments) {
    int pieces = arguments.length == 0 ? 200 : Integer.parseInt(arguments[0]);
    System.out.println(
        "| extreme | values/s | rocked Hz | lift s | spikes | wrong digits | read | mean µm | worst"
            + " µm | refused |");
    System.out.println("|---|---|---|---|---|---|---|---|---|---|");
    scenes().forEach(scene -> System.out.println(row(scene, pieces, 20261125)));
  }
}
