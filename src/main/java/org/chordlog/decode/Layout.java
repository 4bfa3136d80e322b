package org.chordlog.decode;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;

/**
 * What bodies of one form have in common.
 *
 * @param text with its numbers, times and varying letters taken out (see {@link BodyText})
 * @param numbers of each body, place by place
 * @param letters that were seen at each place of a varying letter, in order
 */
record Layout(String text, List<List<String>> numbers, List<List<String>> letters) {

  /** The commonest form, and where letters vary the commonest that leaves them open. */
  static List<Layout> of(List<String> bodies) {
    List<BodyText> plain = commonest(bodies, false);
    List<BodyText> open = commonest(bodies, true);
    List<Layout> layouts = new ArrayList<>();
    if (!plain.isEmpty()) {
      layouts.add(new Layout(plain.get(0).text(), numbers(plain), List.of()));
    }
    if (open.size() > plain.size()) {
      layouts.add(0, ofOpen(open));
    }
    return layouts;
  }

  private static List<BodyText> commonest(List<String> bodies, boolean letters) {
    Map<String, List<BodyText>> forms = new LinkedHashMap<>();
    for (String body : bodies) {
      BodyText text = BodyText.of(body, letters);
      if (!text.numbers().isEmpty()) {
        forms.computeIfAbsent(text.text(), t -> new ArrayList<>()).add(text);
      }
    }
    return forms.values().stream()
        .max((a, b) -> Integer.compare(a.size(), b.size()))
        .orElse(List.of());
  }

  private static List<List<String>> numbers(List<BodyText> bodies) {
    return bodies.stream().map(BodyText::numbers).toList();
  }

  /** A letter that never varies is text again. */
  private static Layout ofOpen(List<BodyText> bodies) {
    StringBuilder text = new StringBuilder();
    List<List<String>> varying = new ArrayList<>();
    int place = 0;
    for (char c : bodies.get(0).text().toCharArray()) {
      if (c != BodyText.LETTER) {
        text.append(c);
        continue;
      }
      int at = place++;
      TreeSet<String> seen = new TreeSet<>(bodies.stream().map(b -> b.letters().get(at)).toList());
      text.append(seen.size() == 1 ? seen.first() : String.valueOf(c));
      if (seen.size() > 1) {
        varying.add(List.copyOf(seen));
      }
    }
    return new Layout(text.toString(), numbers(bodies), varying);
  }

  /** Whether a varying letter comes before the first number, as the name of a channel would. */
  boolean beginsWithLetter() {
    int letter = text.indexOf(BodyText.LETTER);
    return letter >= 0 && letter < text.indexOf(BodyText.PLACE);
  }
}
