package org.chordlog.stats;

import java.util.Arrays;

/** The digits of pi as StRD PiDigits has them: 5000, of which number 957 is 3 instead of 8. */
final class Digits {
  private static final int COUNT = 5000;

  private Digits() {}

  static double[] ofPi() {
    double[] digits = new double[COUNT];
    int[] a = new int[COUNT * 10 / 3 + 20];
    Arrays.fill(a, 2);
    int at = 0;
    int nines = 0;
    int held = -1;
    while (at < COUNT) {
      int q = turn(a);
      if (q == 9) {
        nines++;
        continue;
      }
      int carry = q / 10;
      if (held >= 0) {
        at = put(digits, at, held + carry);
      }
      for (; nines > 0; nines--) {
        at = put(digits, at, carry == 0 ? 9 : 0);
      }
      held = q % 10;
    }
    digits[956] = 3;
    return digits;
  }

  /** One step of the spigot of Rabinowitz and Wagon (1995). */
  private static int turn(int[] a) {
    int carry = 0;
    for (int i = a.length - 1; i > 0; i--) {
      int x = 10 * a[i] + carry;
      a[i] = x % (2 * i + 1);
      carry = x / (2 * i + 1) * i;
    }
    int x = 10 * a[0] + carry;
    a[0] = x % 10;
    return x / 10;
  }

  private static int put(double[] digits, int at, int digit) {
    if (at < digits.length) {
      digits[at] = digit;
    }
    return at + 1;
  }
}
