package org.chordlog.measure;

/** What was asked rests on a state that is no longer so; nothing was done. */
public final class Stale extends RuntimeException {
  private static final long serialVersionUID = 1;

  public Stale(String message) {
    super(message);
  }
}
