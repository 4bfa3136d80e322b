package org.chordlog.decode;

import java.math.BigDecimal;
import java.util.List;
import org.chordlog.decode.NumberForm.Mark;
import org.chordlog.decode.NumberForm.Sign;
import org.jspecify.annotations.Nullable;

/** The form in which numbers are written, as narrow as all of them allow. */
final class NumberGuess {
  private static final BigDecimal THOUSANDTH = new BigDecimal("0.001");
  private final List<String> numbers;

  NumberGuess(List<String> numbers) {
    this.numbers = numbers;
  }

  NumberForm form() {
    Mark mark = mark();
    boolean padded = numbers.stream().map(NumberGuess::whole).anyMatch(w -> w.matches("0[0-9]+"));
    @Nullable Integer digits =
        padded ? same(numbers.stream().map(n -> whole(n).length()).toList()) : null;
    @Nullable Integer decimals = mark == Mark.NONE ? Integer.valueOf(0) : decimals();
    BigDecimal scale = mark == Mark.NONE ? THOUSANDTH : BigDecimal.ONE;
    return new NumberForm(mark, sign(), digits, decimals, scale);
  }

  @Nullable Integer decimals() {
    return same(numbers.stream().map(n -> fraction(n).length()).toList());
  }

  private Mark mark() {
    if (numbers.stream().anyMatch(n -> n.indexOf('.') >= 0)) {
      return Mark.POINT;
    }
    return numbers.stream().anyMatch(n -> n.indexOf(',') >= 0) ? Mark.COMMA : Mark.NONE;
  }

  private Sign sign() {
    if (numbers.stream().anyMatch(n -> isSign(n.charAt(n.length() - 1)))) {
      return Sign.AFTER;
    }
    boolean plus = numbers.stream().anyMatch(n -> n.charAt(0) == '+');
    return plus && numbers.stream().allMatch(n -> isSign(n.charAt(0)))
        ? Sign.ALWAYS
        : Sign.OPTIONAL;
  }

  private static boolean isSign(char c) {
    return c == '+' || c == '-';
  }

  private static String bare(String number) {
    return number.replaceAll("[+ -]", "").replace(',', '.');
  }

  private static String whole(String number) {
    String bare = bare(number);
    int point = bare.indexOf('.');
    return point < 0 ? bare : bare.substring(0, point);
  }

  private static String fraction(String number) {
    String bare = bare(number);
    int point = bare.indexOf('.');
    return point < 0 ? "" : bare.substring(point + 1);
  }

  private static @Nullable Integer same(List<Integer> counts) {
    return counts.stream().distinct().count() == 1 ? counts.get(0) : null;
  }
}
