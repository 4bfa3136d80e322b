package org.chordlog.capture;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.BiConsumer;
import org.chordlog.capture.CaptureOutcome.Captured;
import org.chordlog.capture.CaptureOutcome.Offered;
import org.chordlog.measure.CaptureMode;
import org.chordlog.measure.Indicator;

/**
 * Clumsy hands: set down badly and put right, pressed later, slid from piece to piece, lifted only
 * in part, laid on the bench between pieces. As a table of what is taken, and what is offered in
 * its place.
 */
final class HandsTable {
  private static final double RIGHT_UM = 5;
  private static final double BENCH_MM = 0.03;

  /** Three bands of four steps, and the noise of a mean. */
  private static final double APART_MM = 0.013;

  /** What a hand does with a piece of that depth, mm; the plunger is left where the next begins. */
  record Scene(String name, boolean lifts, BiConsumer<Play, Double> hand) {}

  /**
   * What came of so many pieces: depths taken that are right, taken that are wrong, and pieces
   * whose right depth was offered in place of another; {@code apart}: pieces that differ by more
   * than three bands from the one taken or offered before, so that they can be told from it.
   */
  record Row(
      Scene scene,
      double rateHz,
      int pieces,
      int right,
      int wrong,
      int rightOffered,
      int apart,
      double worstOfRightUm,
      Map<String, Integer> others) {
    @Override
    public String toString() {
      return String.format(
          Locale.ROOT,
          "| %s | %.0f | %d | %d | %d | %d%s | %.1f | %s |",
          scene.name,
          rateHz,
          pieces,
          right,
          wrong,
          rightOffered,
          scene.lifts ? "" : " of " + apart,
          worstOfRightUm,
          others);
    }
  }

  private HandsTable() {}

  static List<Scene> scenes() {
    return List.of(
        new Scene(
            "set down badly by 0.6 mm for 0.9 s, then put right",
            true,
            (play, mm) ->
                play.move(mm + 0.6, 0.4)
                    .land(t -> mm + 0.6, 0.9)
                    .move(mm, 0.3)
                    .hold(1.5)
                    .leave(0.3)),
        new Scene(
            "pressed by 80 µm after 0.8 s",
            true,
            (play, mm) ->
                play.move(mm - 0.08, 0.4)
                    .land(t -> t < 0.8 ? mm - 0.08 : mm, 2.3)
                    .move(mm, 0.05)
                    .leave(0.3)),
        new Scene("slid from piece to piece", false, (play, mm) -> play.move(mm, 0.5).hold(1.5)),
        new Scene(
            "lifted by 40 % only",
            false,
            (play, mm) ->
                play.move(mm, 0.4).hold(1.5).move(mm - 0.4 * (mm - Play.AIR_MM), 0.3).hold(0.2)),
        new Scene(
            "laid on the bench in between",
            true,
            (play, mm) -> play.touch(mm, 1.2).move(BENCH_MM, 0.4).hold(1).leave(0.3)));
  }

  static Row row(Scene scene, double rateHz, int pieces, long seed) {
    Indicator indicator = new Indicator(0.001, 0.003, 12.7);
    Capture capture = Captures.of(CaptureOptions.of(CaptureMode.SETTLED).settings(indicator));
    Play play = new Play(rateHz, 0.001, seed).hold(2 + 8 / rateHz);
    List<Double> right = new ArrayList<>();
    int[] wrong = {0};
    int[] offered = {0};
    double[] toldMm = {Double.NaN};
    int apart = 0;
    Map<String, Integer> others = new TreeMap<>();
    int fed = 0;
    for (int i = 0; i < pieces; i++) {
      double truth = 5 + 0.05 * (2 * play.random().nextDouble() - 1);
      scene.hand.accept(play, truth);
      apart += Math.abs(truth - toldMm[0]) > APART_MM ? 1 : 0;
      for (; fed < play.samples().size(); fed++) {
        capture.offer(
            play.samples().get(fed),
            outcome -> {
              if (outcome instanceof Captured captured) {
                double error = errorUm(captured.depth().valueNm(), truth);
                toldMm[0] = captured.depth().valueNm() / 1e6;
                if (error < RIGHT_UM) {
                  right.add(error);
                } else {
                  wrong[0]++;
                }
              } else if (outcome instanceof Offered other) {
                toldMm[0] = other.depth().valueNm() / 1e6;
                offered[0] += errorUm(other.depth().valueNm(), truth) < RIGHT_UM ? 1 : 0;
              } else {
                others.merge(SettledTable.named(outcome), 1, Integer::sum);
              }
            });
      }
    }
    double worst = right.stream().mapToDouble(e -> e).max().orElse(Double.NaN);
    return new Row(scene, rateHz, pieces, right.size(), wrong[0], offered[0], apart, worst, others);
  }

  private static double errorUm(long valueNm, double truthMm) {
    return Math.abs(valueNm - truthMm * 1e6) / 1e3;
  }

  /** Prints the table; the argument is the count of pieces a row. */
  public static void main(String[] arguments) {
    int pieces = arguments.length == 0 ? 200 : Integer.parseInt(arguments[0]);
    System.out.println(
        "| hand | values/s | pieces | taken right | taken wrong | right one offered, of those apart |"
            + " worst µm |"
            + " else |");
    System.out.println("|---|---|---|---|---|---|---|---|");
    for (double rate : new double[] {10, 20, 100}) {
      scenes().forEach(scene -> System.out.println(row(scene, rate, pieces, 20261125)));
    }
  }
}
