package org.chordlog.decode;

import com.google.re2j.Matcher;
import com.google.re2j.Pattern;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** From the bodies of frames to profiles that could read them. */
final class Bodies {
  private static final Pattern NUMBER = Pattern.compile("[+-]? *[0-9]+(?:[.,][0-9]+)?[+-]?");
  static final char PLACE = '\u0001';

  /** Bodies of one make: the text with its numbers taken out, and the numbers of each body. */
  record Make(String text, List<List<String>> numbers) {}

  private Bodies() {}

  static List<Candidate> candidates(Cuts.Cut cut, boolean sevenBit, @Nullable Polling polling) {
    Make make = commonest(cut.bodies());
    if (make.numbers().isEmpty()) {
      return List.of();
    }
    return Guess.of(cut, make).stream()
        .map(
            c ->
                new Candidate(
                    c.profile().withSevenBit(sevenBit).withPolling(polling),
                    c.trust(),
                    c.assumptions()))
        .toList();
  }

  private static Make commonest(List<String> bodies) {
    Map<String, Make> makes = new HashMap<>();
    for (String body : bodies) {
      Matcher matcher = NUMBER.matcher(body);
      List<String> numbers = new ArrayList<>();
      while (matcher.find()) {
        numbers.add(matcher.group());
      }
      if (!numbers.isEmpty()) {
        String text = matcher.reset().replaceAll(String.valueOf(PLACE));
        makes.computeIfAbsent(text, t -> new Make(t, new ArrayList<>())).numbers().add(numbers);
      }
    }
    return makes.values().stream()
        .max((a, b) -> Integer.compare(a.numbers().size(), b.numbers().size()))
        .orElse(new Make("", List.of()));
  }
}
