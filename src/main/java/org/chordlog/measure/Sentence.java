package org.chordlog.measure;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Objects;

/**
 * What is said to a person, for whom its lengths are put into the unit he reads. It is made without
 * knowing that unit: {@code values} go to the places of {@code pattern}, a pattern of {@link
 * java.util.Formatter}; a {@link Quantity} or another sentence goes to a {@code %s}.
 */
public record Sentence(String pattern, List<Object> values) {
  public static final Sentence EMPTY = new Sentence("", List.of());

  public Sentence {
    values = List.copyOf(values);
  }

  /** One value for each place of the pattern. */
  public static Sentence of(String pattern, Object... values) {
    return new Sentence(pattern, Arrays.asList(values));
  }

  /** Words that hold no length. */
  public static Sentence plain(String text) {
    return text.isEmpty() ? EMPTY : of("%s", text);
  }

  /** The sentences one after the other, those that are empty left out. */
  public static Sentence joined(String between, List<Sentence> all) {
    List<Sentence> said = all.stream().filter(each -> !each.isEmpty()).toList();
    String places = String.join(between.replace("%", "%%"), said.stream().map(s -> "%s").toList());
    return new Sentence(places, List.copyOf(said));
  }

  /** This sentence, and the next one behind it. */
  public Sentence and(Sentence next) {
    return joined(" ", List.of(this, next));
  }

  public boolean isEmpty() {
    return pattern.isEmpty();
  }

  /** Whether it says a length. */
  public boolean hasLength() {
    return values.stream()
        .anyMatch(
            each -> each instanceof Quantity || (each instanceof Sentence s && s.hasLength()));
  }

  /** With its lengths in that unit. */
  public String in(Lengths lengths) {
    Object[] said = values.stream().map(value -> said(value, lengths)).toArray();
    return String.format(Locale.ROOT, pattern, said);
  }

  private static Object said(Object value, Lengths lengths) {
    if (value instanceof Quantity quantity) {
      return lengths.text(quantity);
    }
    return value instanceof Sentence part ? part.in(lengths) : Objects.requireNonNull(value);
  }

  /** With its lengths in mm. */
  @Override
  public String toString() {
    return in(Lengths.MM);
  }
}
