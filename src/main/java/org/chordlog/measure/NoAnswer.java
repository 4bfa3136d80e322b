package org.chordlog.measure;

/** What was asked was begun, and whether it was done is not known yet. */
public final class NoAnswer extends RuntimeException {
  private static final long serialVersionUID = 1;

  public NoAnswer(String message) {
    super(message);
  }
}
