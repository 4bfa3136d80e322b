package org.chordlog.study;

/** What a study examines. */
public enum StudyKind {
  CROSSED("every operator measures every piece, by analysis of variance"),
  RANGE("every operator measures every piece, by averages and ranges"),
  NESTED("every operator measures pieces of their own, by analysis of variance"),
  SPLIT("every operator measures the same places on every piece"),
  ONE_OPERATOR("repeatability of one operator on several pieces"),
  BIAS("readings on one master against its value"),
  LINEARITY("bias on several masters, as a line over their values"),
  STABILITY("one master over days and runs"),
  TYPE1("repeatability and bias on one master against the tolerance"),
  PLACING("bridge placed by eye against placed on marks"),
  PROCESS("capability of the measuring process");

  private final String words;

  StudyKind(String words) {
    this.words = words;
  }

  /** The kind in plain words. */
  public String words() {
    return words;
  }
}
