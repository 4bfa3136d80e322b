package org.chordlog.cli.station;

import picocli.CommandLine.Command;

/** Calibrations in and out as a file. */
@Command(
    name = "calibrations",
    mixinStandardHelpOptions = true,
    sortOptions = false,
    description = {
      "Writes the calibrations of the running service as CSV, or adds calibrations and"
          + " certificates from CSV.",
      "Columns needed: station, bridge, taken_utc, due_utc, taken_by, span_mm,"
          + " u_span_mm (standard uncertainty). Where known: zero_offset_mm, foot_radius_mm,"
          + " u_zero_offset_mm, u_foot_radius_mm, cov_span_zero_mm2, cov_span_foot_mm2,"
          + " cov_zero_foot_mm2, degrees_of_freedom, summary.",
      "Times as 2026-05-04, 2026-05-04 14:30 or 4.5.2026 14:30, in UTC unless an offset follows."
    })
public final class CalibrationsCommand extends GaugeFile {}
