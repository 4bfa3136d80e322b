package org.chordlog.store.sqlite;

import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * The tables whose rows are sealed: rows are added to them and never changed. Code and columns are
 * part of what is hashed and are never changed; a column that is added later needs a new code.
 */
enum SealedTable {
  READING(
      1,
      "reading",
      "id",
      "station station_sequence job_id piece position mode value_nm scatter_nm sample_count"
          + " first_sample last_sample monotonic_nanos wall_micros depth_nm set_up_id radius_mm"
          + " lower_mm upper_mm curvature_per_mm standard_uncertainty_per_mm coverage_factor"
          + " degrees_of_freedom decision marks clock raw_hex kind pass revision measured_by"
          + " material_lot run_id"),
  CHANGE(2, "change", "id", "id at_micros made_by what old_value new_value why"),
  EXCLUSION(3, "exclusion", "id", "id reading_id job_id excluded reason at_micros made_by"),
  CALIBRATION(
      4,
      "calibration",
      "id",
      "id station bridge_id span_mm zero_offset_mm foot_radius_mm covariance"
          + " degrees_of_freedom taken_micros due_micros taken_by summary"),
  REVISION(
      5,
      "specification_revision",
      "(job_id * 1000000 + revision)",
      "job_id revision at_micros made_by why specification"),
  SET_UP(6, "set_up", "id", "id body"),
  ZERO(
      7,
      "zero",
      "id",
      "id station bridge_id value_nm scatter_nm sample_count taken_micros taken_by"),
  EVENT(
      8,
      "job_event",
      "id",
      "id job_id machine kind after_reading_id at_micros setting_before setting_after"
          + " material_lot note made_by"),
  WITHDRAWAL(9, "event_withdrawal", "id", "id event_id reason at_micros made_by"),
  ALERT_EVENT(
      10,
      "alert_event",
      "id",
      "id alert_id revision kind about subject what from_state state present unsteady since_micros"
          + " changed_micros shelved_until_micros figures detail first_reading_id last_reading_id"
          + " assigned_to at_micros made_by note event_key"),
  LOGBOOK(
      11,
      "logbook_entry",
      "id",
      "id machine kind roller state_before state_after note done_micros done_by corrects_id why"
          + " withdraws at_micros made_by");

  /** Those of the layout that began the chain of hashes; later ones began empty. */
  private static final int LAST_CODE_OF_THE_FIRST = 9;

  final int code;
  final String table;
  private final String key;
  private final String columns;

  SealedTable(int code, String table, String key, String words) {
    this.code = code;
    this.table = table;
    this.key = key;
    columns = words.replace(" ", ", ");
  }

  /** Null where no table has that code. */
  static @Nullable SealedTable find(int code) {
    return Stream.of(values()).filter(each -> each.code == code).findFirst().orElse(null);
  }

  /** Whether it was there when the chain of hashes began. */
  boolean ofTheFirst() {
    return code <= LAST_CODE_OF_THE_FIRST;
  }

  /** Key, then the columns in the order in which they are hashed. */
  String select() {
    return "SELECT " + key + ", " + columns + " FROM " + table;
  }

  String selectOne() {
    return this == REVISION
        ? select() + " WHERE job_id = ?1 / 1000000 AND revision = ?1 % 1000000"
        : select() + " WHERE id = ?1";
  }

  String keys() {
    return "SELECT " + key + " FROM " + table + " ORDER BY 1";
  }

  /** Of a row that was added, within a trigger. */
  String keyOfNew() {
    return this == REVISION ? "NEW.job_id * 1000000 + NEW.revision" : "NEW.id";
  }

  /** "reading 17", "job 3 revision 2". */
  String named(long key) {
    return this == REVISION
        ? "job " + key / 1_000_000 + ", revision " + key % 1_000_000
        : table.replace('_', ' ') + " " + key;
  }
}
