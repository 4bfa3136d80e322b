package org.chordlog.cli.records;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.apache.commons.csv.CSVRecord;
import org.chordlog.measure.Job;
import org.chordlog.measure.Reading;
import org.chordlog.report.ReadingCsv;
import org.chordlog.store.Store;
import org.jspecify.annotations.Nullable;

/**
 * Compares exported readings with the stored ones, column by column. What may change later without
 * a fault, because it is no part of the reading, is the name of its job, whether it is excluded and
 * its phase, which older files do not have; a lot that was put right may be the one recorded first.
 */
final class CsvComparison {
  private static final int MOST = 100;
  private static final Set<String> NOT_OF_THE_READING =
      Set.of("job", "part", "machine", "excluded_reason", "phase");

  private static final String LOT = "material_lot";

  private final List<CSVRecord> rows;
  private final List<String> faults = new ArrayList<>();

  CsvComparison(List<CSVRecord> rows) {
    this.rows = rows;
  }

  /** A sentence for each reading that differs. */
  List<String> with(Store store) {
    Map<String, Map<String, CSVRecord>> stored = new HashMap<>();
    for (CSVRecord row : rows) {
      Map<String, CSVRecord> job =
          stored.computeIfAbsent(cell(row, "job_id"), id -> stored(store, id));
      compare(row, job.get(cell(row, "id")), store);
    }
    return faults.size() > MOST ? faults.subList(0, MOST) : faults;
  }

  private void compare(CSVRecord row, @Nullable CSVRecord stored, Store store) {
    if (stored == null) {
      faults.add("reading " + cell(row, "id") + " is not stored in job " + cell(row, "job_id"));
      return;
    }
    for (String column : stored.toMap().keySet()) {
      String there = cell(stored, column);
      String here = cell(row, column);
      boolean recorded = column.equals(LOT) && here.equals(recordedLot(store, row));
      if (!NOT_OF_THE_READING.contains(column) && !here.equals(there) && !recorded) {
        faults.add(
            "reading %s: %s is %s in the file and %s in the data"
                .formatted(cell(row, "id"), column, here, there));
      }
    }
  }

  private static String recordedLot(Store store, CSVRecord row) {
    Reading reading = store.readings().find(Long.parseLong(cell(row, "id"))).orElseThrow();
    String recorded = reading.circumstances().materialLot();
    return recorded != null
        ? recorded
        : store.jobs().find(reading.jobId()).map(Job::materialLot).orElse("");
  }

  private static String cell(CSVRecord row, String column) {
    return row.isSet(column) ? row.get(column) : "";
  }

  private static Map<String, CSVRecord> stored(Store store, String job) {
    Map<String, CSVRecord> byId = new HashMap<>();
    if (!job.matches("\\d{1,18}")) {
      return byId;
    }
    try {
      StringBuilder text = new StringBuilder();
      long unused = new ReadingCsv(store).write(Long.parseLong(job), text);
      SealedCsv.parse(text.toString()).forEach(row -> byId.put(row.get("id"), row));
      return byId;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
