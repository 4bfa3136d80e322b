package org.chordlog.measure;

/** One thing wrong with an input: the field, the value given, what is wrong, what is allowed. */
public record Fault(String field, String value, String problem, String allowed) {
  @Override
  public String toString() {
    return field + ": " + value + " " + problem + "; allowed: " + allowed;
  }
}
