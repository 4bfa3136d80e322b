package org.chordlog.decode;

import org.jspecify.annotations.Nullable;

/** Reads one number by the exact grammar of {@link NumberForm}; holds the last one read. */
final class NumberText {
  private final NumberForm.Sign rule;
  private final int mark;
  long digits;
  int integerDigits;
  int decimals;
  boolean zeroPadded;
  int sign;

  /** Where reading stopped: behind the number and the blanks that follow it. */
  int end;

  NumberText(NumberForm form) {
    rule = form.sign();
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
    if (at < 0) {
      return "no number";
    }
    if (rule == NumberForm.Sign.AFTER) {
      at = sign(bytes, skipBlanks(bytes, at, to), to);
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
    while (at < to && bytes[at] >= '0' && bytes[at] <= '9') {
      digits = digits * 10 + (bytes[at] - '0');
      at++;
    }
    return at;
  }

  static int skipBlanks(byte[] bytes, int from, int to) {
    int at = from;
    while (at < to && bytes[at] == ' ') {
      at++;
    }
    return at;
  }
}
