package org.chordlog.web;

import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import org.chordlog.measure.Exclusion;
import org.chordlog.measure.Reading;
import org.chordlog.store.Readings;
import org.jspecify.annotations.Nullable;

/** Every reading of a job as CSV (RFC 4180), paged by its id, so that no long job fills memory. */
final class ReadingCsv {
  private static final int PAGE = 1_000;
  private static final CSVFormat FORMAT =
      CSVFormat.RFC4180
          .builder()
          .setHeader(
              "id",
              "station",
              "station_sequence",
              "job_id",
              "piece",
              "position",
              "at",
              "depth_mm",
              "depth_scatter_mm",
              "samples",
              "capture",
              "radius_mm",
              "lower_mm",
              "upper_mm",
              "curvature_per_mm",
              "coverage_factor",
              "decision",
              "marks",
              "excluded",
              "reason",
              "set_up_id",
              "raw_hex")
          .get();

  private ReadingCsv() {}

  static void write(Readings readings, long jobId, OutputStream out) throws IOException {
    Map<Long, Exclusion> exclusions = new HashMap<>();
    readings.exclusionsOfJob(jobId).forEach(each -> exclusions.put(each.readingId(), each));
    CSVPrinter printer =
        new CSVPrinter(new OutputStreamWriter(out, StandardCharsets.UTF_8), FORMAT);
    long after = 0;
    List<Reading> page = readings.ofJob(jobId, after, PAGE);
    while (!page.isEmpty()) {
      for (Reading reading : page) {
        printer.printRecord(row(ReadingView.of(reading), exclusions.get(reading.id())));
        after = reading.id();
      }
      page = readings.ofJob(jobId, after, PAGE);
    }
    printer.flush();
  }

  private static Object[] row(ReadingView r, @Nullable Exclusion exclusion) {
    boolean excluded = exclusion != null && exclusion.excluded();
    return new Object[] {
      r.id(),
      r.station(),
      r.stationSequence(),
      r.jobId(),
      r.piece(),
      r.position(),
      r.at(),
      r.depthMm(),
      r.depthScatterMm(),
      r.sampleCount(),
      r.captureMode(),
      orEmpty(r.radiusMm()),
      r.lowerMm(),
      orEmpty(r.upperMm()),
      r.curvaturePerMm(),
      r.coverageFactor(),
      r.decision(),
      r.marks().stream().map(Enum::name).collect(Collectors.joining(" ")),
      excluded,
      exclusion != null && excluded ? exclusion.reason() : "",
      r.setUpId(),
      r.rawHex()
    };
  }

  private static Object orEmpty(@Nullable Double value) {
    return value == null ? "" : value;
  }
}
