package org.chordlog.measure.alert;

import java.util.List;
import org.chordlog.measure.Check;

/**
 * One thing that somebody must know, from when it is raised to when it is over; the same again gets
 * a new id. {@code revision} counts its events, so that who acts on an older state is found out;
 * {@code assignedTo} is empty where nobody has it.
 */
public record Alert(
    long id,
    int revision,
    AlertKey key,
    AlertStatus status,
    AlertEvidence evidence,
    String assignedTo) {
  public Alert {
    Check.within("revision", (long) revision, 1, Integer.MAX_VALUE);
  }

  /** A new one. */
  public static Alert raised(AlertKey key, AlertStatus status, AlertEvidence evidence) {
    return new Alert(0, 1, key, status, evidence, "");
  }

  /** As it is after one more event. */
  public Alert next(AlertStatus changed) {
    return new Alert(id, revision + 1, key, changed, evidence, assignedTo);
  }

  public Alert withId(long newId) {
    return new Alert(newId, revision, key, status, evidence, assignedTo);
  }

  public Alert withEvidence(AlertEvidence newest) {
    return new Alert(id, revision, key, status, newest, assignedTo);
  }

  public Alert withAssigned(String to) {
    return new Alert(id, revision, key, status, evidence, to);
  }

  public AlertKind kind() {
    return key.kind();
  }

  /**
   * The kind whose urgency, time to act and advice hold: a creep that nears a limit goes by those
   * of the limit.
   */
  public AlertKind treatedAs() {
    boolean nearsLimit =
        kind() == AlertKind.ROLLER_CREEPS
            && evidence.figure(AlertFigure.PIECES_LEFT_AT_LEAST) != null;
    return nearsLimit ? AlertKind.LIMIT_AHEAD : kind();
  }

  /**
   * By when somebody must act, by its events in order: from when it was raised, or raised again
   * because it came back or got worse.
   */
  public long actByMicros(List<AlertEvent> events) {
    long from = status.sinceMicros();
    for (AlertEvent each : events) {
      from = each.what() == AlertEvent.What.AGAIN ? each.atMicros() : from;
    }
    return from + treatedAs().timeToAct().toNanos() / 1_000;
  }

  public AlertSubject subject() {
    return key.subject();
  }

  public AlertState state() {
    return status.state();
  }

  /** Whether it is not over. */
  public boolean open() {
    return state() != AlertState.NORMAL;
  }
}
