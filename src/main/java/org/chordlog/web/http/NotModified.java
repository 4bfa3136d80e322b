package org.chordlog.web.http;

/** The caller has this snapshot already. */
final class NotModified extends RuntimeException {
  private static final long serialVersionUID = 1L;

  NotModified() {
    super("not modified", null, false, false);
  }
}
