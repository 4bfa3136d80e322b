package org.chordlog.web;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicInteger;
import org.chordlog.report.JobReport;
import org.chordlog.report.PdfReport;

/** Reports that are being written, and how far each is; of two of one job the newer one. */
final class ReportsUnderWay {
  private final Map<Long, Rows> rows = new ConcurrentHashMap<>();

  private record Rows(int of, AtomicInteger done) {}

  /** How far a report is; both 0 where none is being written. */
  record ReportProgress(
      @JsonPropertyDescription("readings laid out; each is laid out twice") int rows, int of) {}

  byte[] write(JobReport report) {
    Rows mine = new Rows(2 * report.readings().size(), new AtomicInteger());
    rows.put(report.job().id(), mine);
    try {
      return PdfReport.write(report, mine.done()::incrementAndGet);
    } finally {
      rows.remove(report.job().id(), mine);
    }
  }

  ReportProgress of(long jobId) {
    Rows found = rows.get(jobId);
    return found == null
        ? new ReportProgress(0, 0)
        : new ReportProgress(found.done().get(), found.of());
  }
}
