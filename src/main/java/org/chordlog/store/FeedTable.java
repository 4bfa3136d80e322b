package org.chordlog.store;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * The tables that a plant has of every edge, by the names and keys that they have in SQL. Readings
 * are only ever added; all others hold facts, whose rows may change. What others name comes before
 * what names it.
 */
public enum FeedTable {
  RUN("run"),
  BRIDGE("bridge"),
  MASTER("master"),
  MOUNT("mount"),
  ZERO("zero"),
  CALIBRATION("calibration"),
  INTERIM_CHECK("interim_check"),
  SET_UP("set_up"),
  JOB("job"),
  SPECIFICATION_REVISION("specification_revision", "job_id", "revision"),
  ACTIVE_JOB("active_job", "station"),
  JOB_EVENT("job_event"),
  EXCLUSION("exclusion"),
  CHANGE("change"),
  INCIDENT("incident"),
  EVENT_WITHDRAWAL("event_withdrawal"),
  SIGNAL_ANSWER("signal_answer"),
  ROLLER_SCALE("roller_scale"),
  ROLLER("roller"),
  GAUGE_STUDY("gauge_study"),
  STUDY_MEASUREMENT("study_measurement"),
  STUDY_DROP("study_drop", "measurement_id"),
  ALERT("alert"),
  ALERT_EVENT("alert_event"),
  LOGBOOK_ENTRY("logbook_entry"),
  READING("reading"),
  PROFILE("profile", "reading_id", "pass");

  private final String table;

  @SuppressWarnings("ImmutableEnumChecker") // a list that can't be changed
  private final List<String> key;

  FeedTable(String table) {
    this(table, "id");
  }

  FeedTable(String table, String... key) {
    this.table = table;
    this.key = List.of(key);
  }

  public static Optional<FeedTable> named(String table) {
    return Stream.of(values()).filter(each -> each.table.equals(table)).findFirst();
  }

  /** Its name in SQL. */
  public String table() {
    return table;
  }

  /** The columns of its primary key. */
  public List<String> key() {
    return key;
  }

  /** Whether its rows may change. */
  public boolean holdsFacts() {
    return this != READING && this != PROFILE;
  }
}
