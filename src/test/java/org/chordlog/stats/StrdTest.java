package org.chordlog.stats;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Locale;
import java.util.stream.IntStream;
import org.chordlog.stats.math.Moments;
import org.chordlog.stats.math.Serial;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * NIST StRD univariate sets with their certified mean, standard deviation and lag-1 autocorrelation
 * (data and values read). The digits demanded are the log relative errors seen, rounded down.
 */
public final class StrdTest {
  @ParameterizedTest
  @CsvSource({
    "PiDigits, 4.53480000000000, 2.86733906028871, -0.00355099287237972, 14, 14, 11",
    "Lottery, 518.958715596330, 291.699727470969, -0.120948622967393, 14, 14, 13",
    "Lew, -177.435000000000, 277.332168044316, -0.307304800605679, 14, 14, 14",
    "Mavro, 2.00185600000000, 0.000429123454003053, 0.937989183438248, 14, 12, 12",
    "Michelso, 299.852400000000, 0.0790105478190518, 0.535199668621283, 14, 13, 13",
    "NumAcc1, 10000002, 1, -0.5, 14, 14, 14",
    "NumAcc2, 1.2, 0.1, -0.999, 14, 14, 11",
    "NumAcc3, 1000000.2, 0.1, -0.999, 14, 9, 9",
    "NumAcc4, 10000000.2, 0.1, -0.999, 14, 8, 8"
  })
  void digits(
      String set,
      double mean,
      double deviation,
      double lagOne,
      double meanDigits,
      double deviationDigits,
      double lagOneDigits) {
    Moments moments = new Moments();
    Serial serial = new Serial();
    for (double value : values(set)) {
      moments.add(value);
      serial.add(value);
    }
    double[] seen = {
      digits(mean, moments.mean()),
      digits(deviation, moments.deviation()),
      digits(lagOne, serial.lagOne(moments.sumOfSquares()))
    };
    assertTrue(
        seen[0] >= meanDigits && seen[1] >= deviationDigits && seen[2] >= lagOneDigits,
        set + " " + Arrays.toString(seen));
  }

  /** Log relative error, 15 at most. */
  public static double digits(double certified, double computed) {
    double error = Math.abs(computed - certified) / Math.abs(certified);
    return error == 0 ? 15 : Math.min(15, -Math.log10(error));
  }

  static double[] values(String set) {
    return switch (set) {
      case "NumAcc1" -> new double[] {10000001, 10000003, 10000002};
      case "NumAcc2" -> alternating(1);
      case "NumAcc3" -> alternating(1_000_000);
      case "NumAcc4" -> alternating(10_000_000);
      case "PiDigits" -> Digits.ofPi();
      default -> Data.column(Data.rows("strd-" + set.toLowerCase(Locale.ROOT) + ".csv"), 0);
    };
  }

  /** As the files have it: x.2, then x.1 and x.3 five hundred times. */
  private static double[] alternating(int base) {
    return IntStream.range(0, 1001)
        .mapToDouble(i -> Double.parseDouble(base + (i == 0 ? ".2" : i % 2 == 1 ? ".1" : ".3")))
        .toArray();
  }
}
