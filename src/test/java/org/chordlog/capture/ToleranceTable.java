package org.chordlog.capture;

import java.util.Locale;
import org.chordlog.measure.Bridge;
import org.chordlog.measure.Face;
import org.chordlog.measure.Indicator;
import org.chordlog.measure.Section;
import org.chordlog.measure.SetUp;
import org.chordlog.measure.Specification;
import org.chordlog.radius.DepthTolerance;
import org.chordlog.radius.RadiusModel;

/** Pieces set down under a vibration of 10 µm, for jobs of wide and tight tolerance: as a table. */
final class ToleranceTable {
  private ToleranceTable() {}

  static Indicator indicator(double permissibleErrorMm) {
    return new Indicator(0.001, permissibleErrorMm, 12.7);
  }

  /** Of R 1000 ± that much, on a bridge of 200 mm; 0 where nobody states a tolerance. */
  static long meanMayErrNm(Indicator indicator, double plusMinusMm) {
    Bridge bridge = new Bridge(1, "long", new Bridge.Span(200, 0.02), new Bridge.Feet(0, 0), 0);
    Section flat = new Section.Flat(10, 40);
    SetUp setUp = new SetUp(bridge, indicator, null, null, flat, Face.OUTER, Face.OUTER);
    return plusMinusMm == 0
        ? 0
        : DepthTolerance.meanMayErrNm(
            RadiusModel.of(setUp),
            new Specification(Face.OUTER, 1000, 1000 - plusMinusMm, 1000 + plusMinusMm));
  }

  static SettledTable.Row row(double rateHz, Indicator indicator, double plusMinusMm, int pieces) {
    return SettledTable.row(
        new SettledTable.Scene(
            "R 1000 \u00b1 " + plusMinusMm, rateHz, 0.001, rateHz < 50 ? 2 : 1.5, 0.010, 0),
        indicator,
        meanMayErrNm(indicator, plusMinusMm),
        pieces,
        20261126);
  }

  /** Prints the table; the argument is the count of pieces a row. */
  public static void main(String[] arguments) {
    int pieces = arguments.length == 0 ? 200 : Integer.parseInt(arguments[0]);
    System.out.println(
        "| permitted µm | tolerance | values/s | step mm | rest s | vibration µm | read | mean µm |"
            + " worst µm | scatter µm | else |");
    System.out.println("|---|---|---|---|---|---|---|---|---|---|---|");
    for (double permissibleErrorMm : new double[] {0.003, 0.001}) {
      Indicator indicator = indicator(permissibleErrorMm);
      for (double plusMinusMm : new double[] {0, 1, 5, 50}) {
        double standardErrorUm =
            Math.max(1000 * permissibleErrorMm, meanMayErrNm(indicator, plusMinusMm) / 1e3);
        for (double rateHz : new double[] {100, 50, 20, 10}) {
          System.out.printf(Locale.ROOT, "| %.1f ", standardErrorUm);
          System.out.println(row(rateHz, indicator, plusMinusMm, pieces));
        }
      }
    }
  }
}
