package org.chordlog.decode;

import com.google.re2j.Pattern;
import java.util.List;
import org.chordlog.decode.NumberForm.Mark;
import org.chordlog.decode.NumberForm.Sign;
import org.jspecify.annotations.Nullable;

/** The form in which numbers are written, as narrow as all of them allow. */
final class NumberGuess {
  private static final Pattern EXPONENT = Pattern.compile("[Ee][+-]?[0-9]+$");
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
    NumberForm form = new NumberForm(mark, sign(), digits, decimals);
    boolean omitted = numbers.stream().anyMatch(n -> whole(n).isEmpty());
    form = omitted ? form.withZeroOmitted() : form;
    boolean exponents = numbers.stream().allMatch(n -> EXPONENT.matcher(n).find());
    form = exponents ? form.withExponent() : form;
    return decimals == null && mark != Mark.NONE && comesAndGoes()
        ? form.withVaryingDecimals()
        : form;
  }

  /** Whether a shorter number is one whose last zeros were left out. */
  private boolean comesAndGoes() {
    List<Integer> lengths = numbers.stream().map(n -> fraction(n).length()).toList();
    int longest = lengths.stream().mapToInt(n -> n).max().orElse(0);
    return numbers.stream()
        .map(NumberGuess::fraction)
        .allMatch(f -> f.length() == longest || f.length() <= 1 || !f.endsWith("0"));
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
    return EXPONENT.matcher(number).replaceAll("").replaceAll("[+ -]", "").replace(',', '.');
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
