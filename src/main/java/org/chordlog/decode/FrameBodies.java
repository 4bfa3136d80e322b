package org.chordlog.decode;

import com.google.re2j.Matcher;
import com.google.re2j.Pattern;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** From the bodies of frames to profiles that could read them. */
final class FrameBodies {
  private static final Pattern NUMBER =
      Pattern.compile("[+-]? *(?:[0-9]+(?:[.,][0-9]+)?|[.,][0-9]+)(?:[Ee][+-]?[0-9]{1,3}|[+-])?");

  /** Dates and times of day, which are never values. */
  private static final Pattern CLOCK =
      Pattern.compile(
          "[0-9]{4}[-/.][0-9]{2}[-/.][0-9]{2}|[0-9]{2}[-/.][0-9]{2}[-/.][0-9]{4}"
              + "|[0-9]{1,2}:[0-9]{2}(?::[0-9]{2}(?:\\.[0-9]+)?)?");

  static final char TIME = '\uE000';
  static final char PLACE = '\u0001';

  /**
   * FrameBodies of one layout: the text with its numbers taken out, and the numbers of each body.
   */
  record Layout(String text, List<List<String>> numbers) {}

  private FrameBodies() {}

  static List<Candidate> candidates(
      FramingCandidates.Cut cut, boolean sevenBit, @Nullable Polling polling) {
    Layout layout = commonest(cut.bodies());
    if (layout.numbers().isEmpty()) {
      return List.of();
    }
    return ProfileGuesser.of(cut, layout).stream()
        .map(
            c ->
                new Candidate(
                    c.profile().withSevenBit(sevenBit).withPolling(polling),
                    c.trust(),
                    c.assumptions()))
        .toList();
  }

  private static Layout commonest(List<String> bodies) {
    Map<String, Layout> layouts = new HashMap<>();
    for (String body : bodies) {
      Matcher matcher = NUMBER.matcher(CLOCK.matcher(body).replaceAll(String.valueOf(TIME)));
      List<String> numbers = new ArrayList<>();
      while (matcher.find()) {
        numbers.add(matcher.group());
      }
      if (!numbers.isEmpty()) {
        String text = matcher.reset().replaceAll(String.valueOf(PLACE));
        layouts.computeIfAbsent(text, t -> new Layout(t, new ArrayList<>())).numbers().add(numbers);
      }
    }
    return layouts.values().stream()
        .max((a, b) -> Integer.compare(a.numbers().size(), b.numbers().size()))
        .orElse(new Layout("", List.of()));
  }
}
