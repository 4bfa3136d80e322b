package org.chordlog.link;

/** Why a link could not be opened or was lost, and what the operator can do about it. */
public final class LinkException extends Exception {
  private static final long serialVersionUID = 1L;

  /** What is the matter, for a machine to read. */
  public enum Reason {
    MISSING,
    BUSY,
    NO_PERMISSION,
    NOT_A_PORT,
    REFUSED,
    LOST,
    SILENT,
    ENDED
  }

  private final Reason reason;

  public LinkException(Reason reason, String message) {
    super(message);
    this.reason = reason;
  }

  public Reason reason() {
    return reason;
  }
}
