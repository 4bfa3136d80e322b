package org.chordlog.web;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import org.apache.commons.csv.CSVPrinter;
import org.chordlog.measure.Length;
import org.chordlog.measure.Reading;
import org.chordlog.measure.Sample;
import org.chordlog.report.DecimalMark;
import org.chordlog.store.Store;
import org.chordlog.web.http.Call;
import org.chordlog.web.http.Downloads;
import org.chordlog.web.http.Refusal;
import org.chordlog.web.http.Route;
import org.chordlog.web.http.Times;

/** The raw samples around a reading: why it was captured as it was. */
final class TraceRoutes {
  private static final int MOST = 20_000;
  private final Store store;

  TraceRoutes(Store store) {
    this.store = store;
  }

  /** Raw samples from before to after a reading, and which of them it was taken from. */
  record TraceView(
      long readingId,
      String station,
      long firstTakenSequence,
      long lastTakenSequence,
      List<SampleView> samples) {}

  /** A sample: its time relative to the reading, and the value as shown, before any zero. */
  record SampleView(long sequence, double atSeconds, String at, double valueMm, boolean button) {}

  List<Route> routes() {
    return List.of(
        draft("/api/readings/{reading}/trace", "Raw samples around a reading")
            .answers(TraceView.class, this::trace),
        draft("/api/readings/{reading}/trace.csv", "Raw samples around a reading")
            .query(ExportRoutes.DECIMAL, "string", ExportRoutes.DECIMAL_WORDS)
            .sends("text/csv", this::csv));
  }

  private static Route.Draft draft(String path, String summary) {
    return Route.get(path, summary)
        .query("before", "integer", "samples before those taken, 0 to 10000, 200 if left out")
        .query("after", "integer", "samples after those taken, 0 to 10000, 100 if left out");
  }

  private TraceView trace(Call call) {
    long id = call.id("reading");
    Reading r = store.readings().find(id).orElseThrow(() -> Refusal.notFound("reading", id));
    long first = r.captured().firstSequence();
    long last = r.captured().lastSequence();
    long from = Math.max(1, first - call.query("before", 200, 0, 10_000));
    long to = last + call.query("after", 100, 0, 10_000);
    List<Sample> samples = store.traces().range(r.station(), from, to, MOST);
    long zero = r.captured().monotonicNanos();
    return new TraceView(
        id, r.station(), first, last, samples.stream().map(s -> view(s, zero)).toList());
  }

  private static SampleView view(Sample s, long zeroNanos) {
    return new SampleView(
        s.sequence(),
        (s.monotonicNanos() - zeroNanos) / 1e9,
        Times.iso(s.wallMicros()),
        Length.mm(s.valueNm()),
        s.button());
  }

  private void csv(Call call) {
    TraceView trace = trace(call);
    StringBuilder text = new StringBuilder();
    DecimalMark mark = ExportRoutes.decimal(call);
    try (CSVPrinter printer = new CSVPrinter(text, mark.format())) {
      printer.printRecord("sequence", "at", "at_seconds", "value_mm");
      for (SampleView s : trace.samples()) {
        printer.printRecord(s.sequence(), s.at(), mark.cell(s.atSeconds()), mark.cell(s.valueMm()));
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    Downloads.send(call, "text/csv", "trace-" + trace.readingId() + ".csv", text.toString());
  }
}
