package org.chordlog.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.function.Function;

/** Mean and local radius of pieces of 3 m at each span, rate and feed, against the truth. */
final class LineMeans {
  static final double[] SPANS = {100, 200, 500};
  static final double[] RATES = {5, 20, 100, 500};
  static final double[] FEEDS = {20, 100, 200};
  private static final double PIECE_MM = 3000;

  private final Map<Integer, LineScore> bySpan = new TreeMap<>();
  private final Map<Integer, LineScore> byRate = new TreeMap<>();
  private final Map<Integer, LineScore> byFeed = new TreeMap<>();
  private final LineScore all = new LineScore();
  private int divided;

  /** So many pieces a cell, a third of that where a stream is longest. */
  void run(int each, long seed) {
    for (double span : SPANS) {
      for (double rate : RATES) {
        for (double feed : FEEDS) {
          cell(span, rate, feed, rate >= 500 && feed <= 20 ? Math.max(1, each / 3) : each, seed);
        }
      }
    }
  }

  private void cell(double span, double rate, double feed, int count, long seed) {
    Random random = new Random(seed + Math.round(1e7 * span + 1e4 * rate + feed));
    LineTrial trial = new LineTrial(LineSetting.of(span, rate, feed, PIECE_MM));
    LineScore cell = new LineScore();
    for (int i = 0; i < count; i++) {
      LineTrial.Seen seen = trial.run(random);
      divided += seen.outcomes().size() == 1 ? 0 : 1;
      seen.into(cell);
    }
    bySpan.computeIfAbsent((int) span, s -> new LineScore()).add(cell);
    byRate.computeIfAbsent((int) rate, s -> new LineScore()).add(cell);
    byFeed.computeIfAbsent((int) feed, s -> new LineScore()).add(cell);
    all.add(cell);
  }

  LineScore all() {
    return all;
  }

  Map<Integer, LineScore> bySpan() {
    return bySpan;
  }

  /** Pieces that were taken for two, or for none. */
  int divided() {
    return divided;
  }

  String table() {
    StringBuilder text = new StringBuilder(LineScore.head()).append('\n');
    bySpan.forEach((span, score) -> text.append(score.row("span " + span)).append('\n'));
    byRate.forEach((rate, score) -> text.append(score.row(rate + " values/s")).append('\n'));
    byFeed.forEach((feed, score) -> text.append(score.row(feed + " mm/s")).append('\n'));
    return text.append(all.row("all")).append('\n').toString();
  }

  List<Bar> bars() {
    List<Bar> bars = new ArrayList<>();
    double off = Math.abs(all.coverage() - 95.45);
    double least = bySpan.values().stream().mapToDouble(LineScore::coverage).min().orElse(0);
    bars.add(
        new Bar(
            "coverage of the mean, " + all.pieces + " pieces",
            "95.45 ± 1 %, at no span below 94 %",
            text("%.1f %% (± %.1f); spans %s", all.coverage(), all.coverageError(), spans()),
            off <= 1 && least >= 94));
    bars.add(
        new Bar(
            "coverage of the local radius",
            "94 to 98.5 %, at no span below 94 %",
            text("%.1f %%; spans %s", 100 * all.local.getMean(), locals()),
            100 * all.local.getMean() <= 98.5
                && bySpan.values().stream().allMatch(s -> s.local.getMean() >= 0.94)));
    double worst = bySpan.values().stream().mapToDouble(LineMeans::biasShare).max().orElse(1);
    bars.add(
        new Bar(
            "bias of the mean",
            "below 0.1 u of what is common, and below 1e-4 of κ (known errors taken off)",
            text("%s e-4; at most %.4f u", biases(), worst),
            worst < 0.1
                && bySpan.values().stream()
                    .allMatch(score -> Math.abs(score.bias.getMean()) < 1e-4)));
    bars.add(zones("zones right, straight ends of twice half the span", 99, 1e-3, 100, 200));
    bars.add(zones("zones right, straight ends seen in part", 95, 1e-3, 500));
    return bars;
  }

  private Bar zones(String what, double least, double most, int... spans) {
    LineScore of = new LineScore();
    for (int span : spans) {
      of.add(bySpan.getOrDefault(span, new LineScore()));
    }
    return new Bar(
        what,
        text("at least %.0f %%; straight share below %.0e", least, most),
        text("%d of %d; worst %.1e", of.right, of.pieces, of.worstStraight),
        100.0 * of.right >= least * of.pieces && of.worstStraight < most);
  }

  private static double biasShare(LineScore score) {
    return Math.abs(score.bias.getMean()) / score.common.getMean();
  }

  private String spans() {
    return join(score -> text("%.1f (± %.1f)", score.coverage(), score.coverageError()));
  }

  private String locals() {
    return join(score -> text("%.1f", 100 * score.local.getMean()));
  }

  private String biases() {
    return join(score -> text("%+.2f ± %.2f", 1e4 * score.bias.getMean(), score.biasError()));
  }

  private String join(Function<LineScore, String> text) {
    return String.join(", ", bySpan.values().stream().map(text).toList());
  }

  static String text(String form, Object... values) {
    return String.format(Locale.ROOT, form, values);
  }
}
