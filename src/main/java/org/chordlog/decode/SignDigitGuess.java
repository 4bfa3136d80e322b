package org.chordlog.decode;

import java.util.List;
import java.util.Map;
import java.util.TreeSet;

/** Whole counts whose first digit is the sign: 0 or another one that says minus. */
final class SignDigitGuess {
  private static final double TRUST = 0.95;

  private SignDigitGuess() {}

  static List<Candidate> of(FramingCandidates.Cut cut, Layout layout) {
    boolean alone = layout.text().equals(String.valueOf(BodyText.PLACE));
    List<String> numbers = layout.numbers().stream().map(n -> n.get(0)).toList();
    int length = numbers.get(0).length();
    TreeSet<String> first = new TreeSet<>(numbers.stream().map(n -> n.substring(0, 1)).toList());
    boolean signs =
        alone
            && length > 3
            && numbers.stream().allMatch(n -> n.length() == length && n.matches("[0-9]+"))
            && first.size() == 2
            && first.first().equals("0")
            && numbers.stream().map(n -> n.charAt(1)).distinct().count() <= 2;
    return signs
        ? CountScales.usual().stream()
            .map(scale -> candidate(cut, length - 1, first.last(), scale))
            .toList()
        : List.of();
  }

  private static Candidate candidate(
      FramingCandidates.Cut cut, int digits, String minus, CountScales scale) {
    NumberForm number =
        NumberForm.counts(NumberForm.Sign.NEVER, digits, scale.scale().toPlainString());
    String pattern = "(?P<sign>[0" + minus + "])(?P<value>[0-9]{" + digits + "})";
    return new Candidate(
        FrameProfile.of(cut.framing(), pattern, number, scale.unit(), Map.of(), cut.checksum())
            .toBuilder()
            .signs(Map.of("0", SignMeaning.PLUS, minus, SignMeaning.MINUS))
            .build(),
        TRUST * scale.trust(),
        List.of("a leading " + minus + " means minus", scale.assumption()));
  }
}
