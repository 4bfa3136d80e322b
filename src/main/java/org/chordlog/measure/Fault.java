package org.chordlog.measure;

/**
 * One thing wrong with an input: the field, the value given (empty where none was), what is wrong,
 * what is allowed.
 */
public record Fault(String field, String value, Sentence problem, Sentence allowed) {
  /** In words that hold no length. */
  public Fault(String field, String value, String problem, String allowed) {
    this(field, value, Sentence.plain(problem), Sentence.plain(allowed));
  }

  /** The same fault of a field by another name. */
  public Fault at(String other) {
    return new Fault(other, value, problem, allowed);
  }

  /** As one sentence. */
  public Sentence said() {
    return value.isEmpty()
        ? Sentence.of("%s %s; allowed: %s", field, problem, allowed)
        : Sentence.of("%s: %s %s; allowed: %s", field, value, problem, allowed);
  }

  @Override
  public String toString() {
    return said().toString();
  }
}
