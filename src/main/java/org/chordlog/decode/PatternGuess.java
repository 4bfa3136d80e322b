package org.chordlog.decode;

import com.google.re2j.Matcher;
import com.google.re2j.Pattern;
import java.util.ArrayList;
import java.util.List;

/** Which numbers of a layout are values, which a channel, and the pattern that says so. */
final class PatternGuess {
  private static final String UNITS =
      "(?i:mm|um|inches|inch|in|microns?|millimet(?:er|re))|(?:\u00C2?\u00B5|\u00CE\u00BC|\u00E6)m";
  private static final Pattern UNIT_WORD =
      Pattern.compile("(?:^|[^A-Za-z])(" + UNITS + ")(?:$|[^A-Za-z])");
  private final FrameBodies.Layout layout;
  private final int count;
  private final List<Integer> values;
  private boolean unitSeen;
  private boolean channelSeen;

  PatternGuess(FrameBodies.Layout layout) {
    this.layout = layout;
    count = layout.numbers().get(0).size();
    List<Integer> marked = new ArrayList<>();
    for (int place = 0; place < count; place++) {
      if (texts(place).stream().anyMatch(n -> n.indexOf('.') >= 0 || n.indexOf(',') >= 0)) {
        marked.add(place);
      }
    }
    values = marked.isEmpty() ? List.of(longest()) : marked;
  }

  /** Places of the values, at most nine. */
  List<Integer> values() {
    return values.size() > 9 ? List.of() : values;
  }

  List<String> valueTexts() {
    return values.stream().flatMap(place -> texts(place).stream()).toList();
  }

  private List<String> texts(int place) {
    return layout.numbers().stream().map(n -> n.get(place)).toList();
  }

  private int longest() {
    int best = 0;
    for (int place = 1; place < count; place++) {
      best = length(place) > length(best) ? place : best;
    }
    return best;
  }

  private int length(int place) {
    return texts(place).stream().mapToInt(String::length).sum();
  }

  /** The whole frame: texts as they are, numbers by what they are, the first unit as a group. */
  String pattern() {
    StringBuilder pattern = new StringBuilder();
    int place = 0;
    StringBuilder literal = new StringBuilder();
    for (char c : (layout.text() + FrameBodies.PLACE).toCharArray()) {
      if (c != FrameBodies.PLACE) {
        literal.append(c);
        continue;
      }
      pattern.append(literal(literal.toString(), place > 0));
      literal.setLength(0);
      pattern.append(place < count ? number(place) : "");
      place++;
    }
    return pattern.toString();
  }

  /** The unit is the first that is named behind a number. */
  private String literal(String text, boolean behindNumber) {
    Matcher word = UNIT_WORD.matcher(text);
    if (!behindNumber || unitSeen) {
      return quoted(text);
    }
    if (isInchMark(text)) {
      unitSeen = true;
      return "(?P<unit>\")" + quoted(text.strip().substring(1));
    }
    if (!word.find()) {
      return quoted(text);
    }
    unitSeen = true;
    return quoted(text.substring(0, word.start(1)))
        + "(?P<unit>"
        + UNITS
        + ")"
        + quoted(text.substring(word.end(1)));
  }

  /** A quote right behind the number means inch, unless the frame quotes texts. */
  private boolean isInchMark(String text) {
    String all = layout.text();
    return text.startsWith("\"") && all.indexOf('"') == all.lastIndexOf('"');
  }

  private static String quoted(String text) {
    StringBuilder pattern = new StringBuilder();
    StringBuilder plain = new StringBuilder();
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (c == FrameBodies.TIME) {
        pattern.append(Pattern.quote(plain.toString())).append("[0-9:./-]+");
        plain.setLength(0);
      } else {
        plain.append(c);
      }
    }
    return pattern.append(Pattern.quote(plain.toString())).toString();
  }

  private String number(int place) {
    int index = values.indexOf(place);
    if (index >= 0) {
      return "(?P<value"
          + (values.size() == 1 ? "" : index + 1)
          + ">[-+ 0-9.,]+(?:[Ee][-+]?[0-9]+)?)";
    }
    List<String> texts = texts(place);
    boolean steady = texts.stream().distinct().count() <= 4;
    if (!channelSeen && steady && texts.stream().allMatch(t -> t.matches("0?[0-9]"))) {
      channelSeen = true;
      return "(?P<channel>[0-9]{1,2})";
    }
    return "[-+ 0-9]+";
  }
}
