package org.chordlog.decode;

import org.jspecify.annotations.Nullable;

/** Reads one number by the exact grammar of {@link NumberForm}; holds the last one read. */
final class NumberText {
  private static final int MOST_EXPONENT = 15;
  private final NumberForm form;
  private final NumberForm.Sign rule;
  private final int mark;
  private final int base;
  long digits;
  int integerDigits;
  int decimals;
  int exponent;
  int exponentDigits;
  boolean zeroPadded;
  int sign;

  /** Where reading stopped: behind the number and the blanks that follow it. */
  int end;

  NumberText(NumberForm form) {
    this.form = form;
    rule = form.sign();
    base = form.base() == NumberForm.Base.HEXADECIMAL ? 16 : 10;
    mark =
        switch (form.mark()) {
          case POINT -> '.';
          case COMMA -> ',';
          case NONE -> -1;
        };
  }

  /** Null when a number stands at {@code from}, else why not. */
  @Nullable String read(byte[] bytes, int from, int to) {
    sign = 0;
    int at = skipBlanks(bytes, from, to);
    if (rule == NumberForm.Sign.ALWAYS || rule == NumberForm.Sign.OPTIONAL) {
      at = sign(bytes, at, to);
      if (sign == 0 && rule == NumberForm.Sign.ALWAYS) {
        return "no sign before the number";
      }
    }
    at = digits(bytes, at, to);
    at = at < 0 ? at : exponent(bytes, at, to);
    if (at < 0) {
      return "no number";
    }
    if (rule == NumberForm.Sign.AFTER) {
      at = sign(bytes, skipBlanks(bytes, at, to), to);
    }
    if (rule == NumberForm.Sign.TWOS_COMPLEMENT) {
      complement();
    }
    end = skipBlanks(bytes, at, to);
    return null;
  }

  private int sign(byte[] bytes, int at, int to) {
    if (at < to && (bytes[at] == '+' || bytes[at] == '-')) {
      sign = bytes[at] == '-' ? -1 : 1;
      return skipBlanks(bytes, at + 1, to);
    }
    return at;
  }

  /** Reads digits, mark, digits; answers where they end or -1. */
  private int digits(byte[] bytes, int from, int to) {
    digits = 0;
    int at = run(bytes, from, to);
    integerDigits = at - from;
    decimals = 0;
    zeroPadded = integerDigits > 1 && bytes[from] == '0';
    if (mark >= 0 && at < to && bytes[at] == mark) {
      int point = at + 1;
      at = run(bytes, point, to);
      decimals = at - point;
      if (decimals == 0) {
        return -1;
      }
    }
    int all = integerDigits + decimals;
    return all == 0 || all > NumberForm.MOST_DIGITS ? -1 : at;
  }

  private int run(byte[] bytes, int from, int to) {
    int at = from;
    for (int digit = digit(bytes, at, to); digit >= 0; digit = digit(bytes, at, to)) {
      digits = digits * base + digit;
      at++;
    }
    return at;
  }

  private int digit(byte[] bytes, int at, int to) {
    return at < to && bytes[at] >= '0' ? Character.digit(bytes[at], base) : -1;
  }

  /** Reads {@code E+00} where the form has one; answers where it ends or -1. */
  private int exponent(byte[] bytes, int from, int to) {
    exponent = 0;
    exponentDigits = 0;
    if (!form.exponent() || from >= to || (bytes[from] | 0x20) != 'e') {
      return form.exponent() && !form.decimalsVary() ? -1 : from;
    }
    int at = from + 1;
    boolean negative = at < to && bytes[at] == '-';
    boolean signed = negative || (at < to && bytes[at] == '+');
    at += signed ? 1 : 0;
    int first = at;
    int most = signed ? 3 : 2;
    while (at < to && bytes[at] >= '0' && bytes[at] <= '9' && at - first < most) {
      exponent = exponent * 10 + bytes[at] - '0';
      at++;
    }
    exponentDigits = at - first;
    boolean whole = at > first && exponent <= MOST_EXPONENT;
    exponent = negative ? -exponent : exponent;
    return whole ? at : -1;
  }

  /** The highest bit of the fixed count of digits is the sign. */
  private void complement() {
    long range = 1L << (4 * Math.min(integerDigits, NumberForm.MOST_DIGITS));
    if (digits >= range / 2) {
      digits = range - digits;
      sign = -1;
    }
  }

  static int skipBlanks(byte[] bytes, int from, int to) {
    int at = from;
    while (at < to && isBlank(bytes[at])) {
      at++;
    }
    return at;
  }

  static boolean isBlank(byte b) {
    return b == ' ' || b == '\t';
  }
}
