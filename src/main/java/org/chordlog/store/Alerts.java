package org.chordlog.store;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.chordlog.measure.alert.Alert;
import org.chordlog.measure.alert.AlertEvent;
import org.chordlog.measure.alert.AlertKey;

/**
 * Alerts and everything that happened to them; events are append-only, an alert is what its newest
 * event says. Cursors note how far a reader of any records has come.
 */
public interface Alerts {
  /**
   * Stores an event under a new id and with it the alert as it is after it; an alert with id 0 is
   * new and gets one. An event whose key is stored already is not stored again: the stored one is
   * given. {@link org.chordlog.measure.Stale} where the alert's revision is not the one after the
   * stored one, or another alert of the key is open; {@link org.chordlog.measure.BadInput} for an
   * alert that does not exist. Nothing is written then.
   */
  AlertEvent add(AlertEvent event);

  /** The same for several, in one commit with cursors that move, by name: all of it or nothing. */
  List<AlertEvent> add(List<AlertEvent> events, Map<String, Long> cursors);

  /** Alerts that are not over, by id. */
  List<Alert> open();

  /** How many of them wait for somebody. */
  int waiting();

  Optional<Alert> open(AlertKey key);

  Optional<Alert> find(long id);

  /** Up to {@code limit} alerts with id below {@code beforeId}, descending, those over too. */
  List<Alert> list(long beforeId, int limit);

  /** The same of one key. */
  List<Alert> list(AlertKey key, long beforeId, int limit);

  /** Events of an alert by id. */
  List<AlertEvent> events(long alertId);

  /** Events of all alerts of a key since then, by id. */
  List<AlertEvent> events(AlertKey key, long sinceMicros);

  /** Up to {@code limit} events of all alerts with id above {@code afterId}, ascending. */
  List<AlertEvent> eventsAfter(long afterId, int limit);

  /** Id of the newest event, 0 while there is none. */
  long lastEventId();

  /** How often alerts were raised since then. */
  long raisedSince(long sinceMicros);

  /** Where a reader of that name is; 0 before its first. */
  long cursor(String name);

  void moveCursor(String name, long id);
}
