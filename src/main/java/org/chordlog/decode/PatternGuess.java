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
  private static final int COUNTED = 8;
  private final Layout layout;
  private final int count;
  private final List<Integer> values;
  private final boolean channelLetter;
  private int lettersSeen;
  private boolean unitSeen;
  private boolean channelSeen;

  /** {@code channelLetter}: whether the first letter that varies names a channel. */
  PatternGuess(Layout layout, boolean channelLetter) {
    this.layout = layout;
    this.channelLetter = channelLetter;
    channelSeen = channelLetter;
    count = layout.numbers().get(0).size();
    List<Integer> marked = new ArrayList<>();
    for (int place = 0; place < count; place++) {
      if (texts(place).stream().anyMatch(n -> n.indexOf('.') >= 0 || n.indexOf(',') >= 0)) {
        marked.add(place);
      }
    }
    List<Integer> still = marked.stream().filter(place -> !counts(place)).toList();
    values = marked.isEmpty() ? List.of(longest()) : still.isEmpty() ? marked : still;
  }

  /** Whether each number of that place is above the last one, as of a counter or a time. */
  private boolean counts(int place) {
    List<String> texts = texts(place);
    Movement movement = new Movement();
    for (String text : texts) {
      String bare = text.replaceAll("[ +]", "").replace(',', '.');
      if (!bare.matches("[0-9]*\\.?[0-9]+")) {
        return false;
      }
      movement.add(Math.round(1000 * Double.parseDouble(bare)));
    }
    boolean eachAnother = texts.stream().distinct().count() == texts.size();
    return count > 1 && texts.size() > COUNTED && eachAnother && movement.onlyRose();
  }

  /** Whether the first value follows itself from frame to frame, so that all are of one channel. */
  boolean moveAsOne() {
    Movement movement = new Movement();
    texts(values.get(0)).stream()
        .map(text -> text.replace(" ", "").replace(',', '.'))
        .filter(text -> text.matches("[-+]?[0-9]*\\.?[0-9]+"))
        .forEach(text -> movement.add(Math.round(1e6 * Double.parseDouble(text))));
    return movement.steadiness() > 0.5;
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
    return counts(place) ? 0 : texts(place).stream().mapToInt(String::length).sum();
  }

  /** The whole frame: texts as they are, numbers by what they are, the first unit as a group. */
  String pattern() {
    StringBuilder pattern = new StringBuilder();
    int place = 0;
    StringBuilder literal = new StringBuilder();
    for (char c : (layout.text() + BodyText.PLACE).toCharArray()) {
      if (c != BodyText.PLACE) {
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

  private String quoted(String text) {
    StringBuilder pattern = new StringBuilder();
    StringBuilder plain = new StringBuilder();
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (c == BodyText.TIME) {
        pattern.append(Pattern.quote(plain.toString())).append("[0-9:./-]+");
        plain.setLength(0);
      } else if (c == BodyText.LETTER) {
        pattern.append(Pattern.quote(plain.toString())).append(letter());
        plain.setLength(0);
      } else {
        plain.append(c);
      }
    }
    return pattern.append(Pattern.quote(plain.toString())).toString();
  }

  private String letter() {
    String letters = "[" + String.join("", layout.letters().get(lettersSeen)) + "]";
    boolean channel = channelLetter && lettersSeen == 0;
    lettersSeen++;
    return channel ? "(?P<channel>" + letters + ")" : letters;
  }

  private String number(int place) {
    int index = values.indexOf(place);
    if (index >= 0) {
      return " *(?P<value" + (values.size() == 1 ? "" : index + 1) + ">" + form(place) + ")";
    }
    List<String> texts = texts(place);
    boolean steady = texts.stream().distinct().count() <= 4;
    if (!channelSeen && steady && texts.stream().allMatch(t -> t.matches(" ?0?[0-9]"))) {
      channelSeen = true;
      return " *(?P<channel>[0-9]{1,2})";
    }
    return " *" + form(place);
  }

  /** As narrow as the numbers of that place allow. */
  private String form(int place) {
    List<String> texts = texts(place);
    boolean marks = texts.stream().anyMatch(t -> t.matches(".*[.,].*"));
    boolean powers = texts.stream().anyMatch(t -> t.matches(".*[Ee].*"));
    boolean after = texts.stream().anyMatch(t -> t.matches(".*[-+]"));
    return "[-+]? *"
        + (marks ? "[0-9]*[.,]?[0-9]+" : "[0-9]+")
        + (powers ? "(?:[Ee][-+]?[0-9]+)?" : "")
        + (after ? "[-+]?" : "");
  }
}
