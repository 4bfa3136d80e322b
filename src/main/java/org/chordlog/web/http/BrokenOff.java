package org.chordlog.web.http;

/** A download that failed when a part of it was sent: nothing can be said in it any more. */
final class BrokenOff extends RuntimeException {
  private static final long serialVersionUID = 1L;

  BrokenOff(Exception cause) {
    super(cause);
  }
}
