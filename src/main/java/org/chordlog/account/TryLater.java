package org.chordlog.account;

/** Not now: after so many seconds. */
public final class TryLater extends RuntimeException {
  private static final long serialVersionUID = 1L;
  private final long seconds;

  TryLater(long seconds, String message) {
    super(message, null, false, false);
    this.seconds = seconds;
  }

  public long seconds() {
    return seconds;
  }
}
