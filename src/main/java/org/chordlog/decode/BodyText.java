package org.chordlog.decode;

import com.google.re2j.Matcher;
import com.google.re2j.Pattern;
import java.util.ArrayList;
import java.util.List;

/**
 * A body with its numbers, times and, where wanted, letters that are alone taken out of its text.
 *
 * @param text the rest, with a sign at each place that something was taken from
 */
record BodyText(String text, List<String> numbers, List<String> letters) {
  static final char PLACE = '\u0001';
  static final char TIME = '\uE000';
  static final char LETTER = '\uE001';
  private static final Pattern NUMBER =
      Pattern.compile("[+-]? *(?:[0-9]+(?:[.,][0-9]+)?|[.,][0-9]+)(?:[Ee][+-]?[0-9]{1,3}|[+-])?");

  /** Dates and times of day, which are never values. */
  private static final Pattern CLOCK =
      Pattern.compile(
          "[0-9]{4}[-/.][0-9]{2}[-/.][0-9]{2}|[0-9]{2}[-/.][0-9]{2}[-/.][0-9]{4}"
              + "|[0-9]{1,2}:[0-9]{2}(?::[0-9]{2}(?:\\.[0-9]+)?)?");

  static BodyText of(String body, boolean lettersToo) {
    String timeless = CLOCK.matcher(body).replaceAll(String.valueOf(TIME));
    List<String> numbers = new ArrayList<>();
    String text = withoutNumbers(timeless, numbers);
    List<String> letters = new ArrayList<>();
    return new BodyText(lettersToo ? withoutLetters(text, letters) : text, numbers, letters);
  }

  private static String withoutNumbers(String text, List<String> numbers) {
    StringBuilder rest = new StringBuilder();
    Matcher matcher = NUMBER.matcher(text);
    int from = 0;
    while (from < text.length() && matcher.find(from)) {
      boolean separator = beginsWithMark(matcher.group()) && isMark(text, matcher.end());
      int to = separator ? matcher.start() + 1 : matcher.end();
      rest.append(text, from, separator ? to : matcher.start());
      if (!separator) {
        withoutBlanksAtItsEnd(rest);
        numbers.add(matcher.group());
        rest.append(PLACE);
      }
      from = to;
    }
    return rest.append(text.substring(Math.min(from, text.length()))).toString();
  }

  /** How many blanks come before a number depends on how long it is. */
  private static void withoutBlanksAtItsEnd(StringBuilder text) {
    while (text.length() > 0 && text.charAt(text.length() - 1) == ' ') {
      text.setLength(text.length() - 1);
    }
  }

  /** The comma of ",5.123" is between two fields, not before decimals. */
  private static boolean beginsWithMark(String number) {
    return number.charAt(0) == '.' || number.charAt(0) == ',';
  }

  private static boolean isMark(String text, int at) {
    return at < text.length() && (text.charAt(at) == '.' || text.charAt(at) == ',');
  }

  private static String withoutLetters(String text, List<String> letters) {
    StringBuilder rest = new StringBuilder(text);
    for (int i = 0; i < text.length(); i++) {
      if (isLetter(text, i) && !isLetter(text, i - 1) && !isLetter(text, i + 1)) {
        letters.add(String.valueOf(text.charAt(i)));
        rest.setCharAt(i, LETTER);
      }
    }
    return rest.toString();
  }

  private static boolean isLetter(String text, int at) {
    return at >= 0 && at < text.length() && Character.toString(text.charAt(at)).matches("[A-Za-z]");
  }
}
