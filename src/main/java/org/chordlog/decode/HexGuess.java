package org.chordlog.decode;

import java.util.List;
import java.util.Map;

/** Counts in hexadecimal digits of a fixed count, negative ones as two's complement. */
final class HexGuess {
  private static final double HEXADECIMAL = 0.9;

  private HexGuess() {}

  static List<Candidate> of(FramingCandidates.Cut cut) {
    List<String> bodies = cut.bodies();
    int digits = bodies.get(0).length();
    boolean hexadecimal =
        bodies.stream().allMatch(b -> b.length() == digits && b.matches("[0-9A-Fa-f]{4,8}"))
            && bodies.stream().anyMatch(b -> b.matches(".*[A-Fa-f].*"));
    return hexadecimal
        ? CountScales.usual().stream().map(scale -> candidate(cut, digits, scale)).toList()
        : List.of();
  }

  private static Candidate candidate(FramingCandidates.Cut cut, int digits, CountScales scale) {
    NumberForm number = NumberForm.hexadecimal(digits, scale.scale().toPlainString());
    return new Candidate(
        FrameProfile.of(cut.framing(), "", number, scale.unit(), Map.of(), cut.checksum()),
        HEXADECIMAL * scale.trust(),
        List.of("the digits are hexadecimal", scale.assumption()));
  }
}
