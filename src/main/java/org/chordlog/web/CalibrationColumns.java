package org.chordlog.web;

import java.util.ArrayList;
import java.util.List;

/**
 * Columns of calibrations as CSV, one calibration a row: where, when, until when, by whom;
 * effective span, zero offset and foot radius with their standard uncertainties (u_) and
 * covariances, mm and mm²; degrees of freedom, empty where not limited. A certificate from
 * elsewhere is a row of the same kind.
 */
final class CalibrationColumns {
  static final String STATION = "station";
  static final String BRIDGE = "bridge";
  static final String TAKEN = "taken_utc";
  static final String DUE = "due_utc";
  static final String BY = "taken_by";
  static final String SPAN = "span_mm";
  static final String ZERO = "zero_offset_mm";
  static final String FOOT = "foot_radius_mm";
  static final List<String> UNCERTAINTIES =
      List.of("u_span_mm", "u_zero_offset_mm", "u_foot_radius_mm");
  static final List<String> COVARIANCES =
      List.of("cov_span_zero_mm2", "cov_span_foot_mm2", "cov_zero_foot_mm2");
  static final String DEGREES = "degrees_of_freedom";
  static final String SUMMARY = "summary";
  static final TableFile.Form FORM = new TableFile.Form("calibrations", columns(), SPAN);

  /** Most calibrations of a file, in or out. */
  static final int MOST = 500;

  private CalibrationColumns() {}

  private static List<String> columns() {
    List<String> columns = new ArrayList<>(List.of(STATION, BRIDGE, TAKEN, DUE, BY));
    columns.addAll(List.of(SPAN, ZERO, FOOT));
    columns.addAll(UNCERTAINTIES);
    columns.addAll(COVARIANCES);
    columns.addAll(List.of(DEGREES, SUMMARY));
    return List.copyOf(columns);
  }
}
