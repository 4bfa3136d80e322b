package org.chordlog.web.openid;

/** Nobody is signed in by what came; the message is for the log. */
public final class NotProved extends Exception {
  private static final long serialVersionUID = 1L;

  /** Why, as the page for signing in tells it. */
  public enum Reason {
    /** The provider was not reached, or answered with something else. */
    AWAY,
    /** The person or the provider said no. */
    DENIED,
    /** What came does not fit to an attempt that this browser began, or began too long ago. */
    STALE,
    /** The provider's word is not good. */
    UNPROVED,
    /** None of the person's groups has a role here. */
    ROLES
  }

  private final Reason reason;

  NotProved(Reason reason, String message) {
    super(message);
    this.reason = reason;
  }

  NotProved(Reason reason, String message, Throwable cause) {
    super(message + ": " + cause.getMessage(), cause);
    this.reason = reason;
  }

  /** That person is known, and may do nothing here. */
  public static NotProved withoutRole(Provider.Claims who) {
    return new NotProved(
        Reason.ROLES, who.name() + ": none of these groups has a role here: " + who.groups());
  }

  public Reason reason() {
    return reason;
  }
}
