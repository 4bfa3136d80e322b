package org.chordlog.decode;

import com.google.re2j.Matcher;
import java.util.Map;

/** The named groups of a pattern by their numbers. */
final class Groups {
  private final Map<String, Integer> numbers;

  Groups(Map<String, Integer> numbers) {
    this.numbers = Map.copyOf(numbers);
  }

  boolean has(String name) {
    return numbers.containsKey(name);
  }

  /** Where the group begins in the body; -1 when it took no part. */
  int start(Matcher match, String name) {
    Integer number = numbers.get(name);
    return number == null ? -1 : match.start(number);
  }

  int end(Matcher match, String name) {
    Integer number = numbers.get(name);
    return number == null ? -1 : match.end(number);
  }

  /** What the group took, without blanks around it; empty when it took no part. */
  String text(Matcher match, String name) {
    Integer number = numbers.get(name);
    String text = number == null ? null : match.group(number);
    return text == null ? "" : text.strip();
  }
}
