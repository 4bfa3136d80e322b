package org.chordlog.measure.alert;

import org.chordlog.measure.Recorded;

/**
 * Something that happened to an alert; append-only. {@code from} is the state before, {@code alert}
 * the alert as it was after it, {@code note} what a person said (may be empty). Who tries the same
 * again gives the same {@code key}, and it happens once; empty where it is not tried again.
 */
public record AlertEvent(
    long id, What what, AlertState from, Alert alert, Recorded recorded, String note, String key) {
  /** Who the service itself is in {@link Recorded#by}. */
  public static final String SERVICE = "Chordlog";

  /** Names are stored. */
  public enum What {
    RAISED,
    /** It came back, or got worse. */
    AGAIN,
    /** What it is about is no longer so. */
    RETURNED,
    /** An alert of another kind says the same from now on; its name is the note. */
    REPLACED,
    /** Somebody said that he knows. */
    ACKNOWLEDGED,
    SHELVED,
    /** Its time on the shelf ended, or somebody ended it. */
    BACK_FROM_SHELF,
    ASSIGNED,
    OUT_OF_SERVICE,
    /** A repair ended, or somebody ended it. */
    BACK_IN_SERVICE
  }

  /** Without a key. */
  public AlertEvent(What what, AlertState from, Alert alert, Recorded recorded, String note) {
    this(0, what, from, alert, recorded, note, "");
  }

  public AlertEvent withKey(String newKey) {
    return new AlertEvent(id, what, from, alert, recorded, note, newKey);
  }

  public AlertState to() {
    return alert.state();
  }

  public long atMicros() {
    return recorded.atMicros();
  }

  public String by() {
    return recorded.by();
  }
}
