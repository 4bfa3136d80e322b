package org.chordlog.web;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Function;
import org.chordlog.report.JobReport;
import org.chordlog.report.PdfReport;

/** Reports that are being written, and how far each is; of two with one token the newer one. */
final class ReportsUnderWay {
  private final Map<Key, Rows> rows = new ConcurrentHashMap<>();

  private record Key(long jobId, String token) {}

  private record Rows(int of, AtomicInteger done) {}

  /** How far a report is; both 0 where none is being written. */
  record ReportProgress(
      @JsonPropertyDescription("readings laid out; each is laid out twice") int rows, int of) {}

  byte[] write(JobReport report, String token) {
    return follow(
        report.job().id(),
        token,
        2 * report.readings().size(),
        rowDone -> PdfReport.write(report, rowDone));
  }

  /** Writes with a count of the rows done, which can be asked for until it returns. */
  <T> T follow(long jobId, String token, int of, Function<Runnable, T> writing) {
    Key key = new Key(jobId, token);
    Rows mine = new Rows(of, new AtomicInteger());
    rows.put(key, mine);
    try {
      return writing.apply(mine.done()::incrementAndGet);
    } finally {
      rows.remove(key, mine);
    }
  }

  ReportProgress of(long jobId, String token) {
    Rows found = rows.get(new Key(jobId, token));
    return found == null
        ? new ReportProgress(0, 0)
        : new ReportProgress(found.done().get(), found.of());
  }
}
