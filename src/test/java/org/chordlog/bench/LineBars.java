package org.chordlog.bench;

import java.util.Random;

/** Bars. */
public final class LineBars {
  private LineBars() {}

  public static void main(String[] arguments) {
    int each = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 60;
    System.out.println(LineScore.head());
    LineScore all = new LineScore();
    for (double span : new double[] {100, 200, 500}) {
      LineScore ofSpan = new LineScore();
      for (double rate : new double[] {5, 20, 100, 500}) {
        for (double feed : new double[] {20, 100, 200}) {
          LineScore cell = new LineScore();
          Random random = new Random(Math.round(1e6 * span + 1e3 * rate + feed));
          LineTrial trial = new LineTrial(LineSetting.of(span, rate, feed, 3000));
          int n = rate == 500 && feed == 20 ? each / 3 : each;
          for (int i = 0; i < n; i++) {
            LineTrial.Seen seen = trial.run(random);
            if (seen.outcomes().size() != 1) {
              System.out.println("pieces " + seen.outcomes().size());
              continue;
            }
            cell.add(seen.outcomes().get(0), seen.truths().get(0), seen.startMm());
          }
          ofSpan.add(cell);
        }
      }
      System.out.println(ofSpan.row("span " + span));
      all.add(ofSpan);
    }
    System.out.println(all.row("all"));
  }
}
