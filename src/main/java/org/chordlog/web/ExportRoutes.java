package org.chordlog.web;

import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.DateTimeException;
import java.time.ZoneId;
import java.util.List;
import org.chordlog.chart.ViewUnit;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Job;
import org.chordlog.report.Csv;
import org.chordlog.report.DecimalMark;
import org.chordlog.report.JobReport;
import org.chordlog.report.ReadingCsv;
import org.chordlog.store.Store;
import org.chordlog.web.http.Call;
import org.chordlog.web.http.Downloads;
import org.chordlog.web.http.Route;

/** A job as files: its readings, its statistics, what happened in it, its report. */
final class ExportRoutes {
  private static final ZoneId UTC = ZoneId.of("UTC");
  private static final String SEAL = "seal";
  static final String DECIMAL = "decimal";
  static final String DECIMAL_WORDS =
      "of the numbers: point (if left out), or comma with semicolons between cells";
  private static final String TOKEN = "token";
  private static final String TOKEN_WORDS =
      "what the asker names this one report, to ask how far it is";

  static final String UNIT_WORDS = "unit of all lengths: mm (if left out), inch";

  private final Store store;
  private final JobReports reports;
  private final JobQif qif;
  private final Clock clock;
  private final ReportsUnderWay underWay = new ReportsUnderWay();

  ExportRoutes(Store store, JobReports reports, JobQif qif, Clock clock) {
    this.store = store;
    this.reports = reports;
    this.qif = qif;
    this.clock = clock;
  }

  List<Route> routes() {
    return List.of(
        Route.get("/api/jobs/{job}/readings.csv", "All readings of a job")
            .query(SEAL, "boolean", "true: the last line is a comment that seals those before it")
            .query(DECIMAL, "string", DECIMAL_WORDS)
            .sends("text/csv", this::readings),
        Route.get("/api/jobs/{job}/statistics.csv", "All figures of a job")
            .query(DECIMAL, "string", DECIMAL_WORDS)
            .sends("text/csv", this::statistics),
        Route.get("/api/jobs/{job}/changes.csv", "What happened in a job, oldest first")
            .query(DECIMAL, "string", DECIMAL_WORDS)
            .sends("text/csv", this::changes),
        Route.get("/api/jobs/{job}/results.qif", "All of a job as QIF 3.0 results (ISO 23952)")
            .sends("application/xml", this::qif),
        Route.get("/api/jobs/{job}/report.pdf", "The report of a job")
            .query("zone", "string", "time zone of the times printed, UTC if left out")
            .query(Call.UNIT, "string", UNIT_WORDS)
            .query("certificate", "boolean", "true: without the readings")
            .query(TOKEN, "string", TOKEN_WORDS)
            .sends("application/pdf", this::report),
        Route.get("/api/jobs/{job}/report-progress", "How far the report being written is")
            .query(TOKEN, "string", TOKEN_WORDS)
            .answers(
                ReportsUnderWay.ReportProgress.class,
                call -> underWay.of(JobRoutes.find(store.jobs(), call).id(), token(call))));
  }

  private void readings(Call call) {
    Job job = JobRoutes.find(store.jobs(), call);
    boolean sealed = call.flag(SEAL);
    ReadingCsv csv = new ReadingCsv(store, decimal(call));
    Downloads.stream(
        call,
        "text/csv; charset=utf-8",
        "job-" + job.id() + "-readings.csv",
        out -> readings(job, sealed, csv, out));
  }

  private static void readings(Job job, boolean sealed, ReadingCsv csv, OutputStream out)
      throws IOException {
    Writer text = new OutputStreamWriter(out, StandardCharsets.UTF_8);
    long unused = sealed ? csv.writeSealed(job.id(), text) : csv.write(job.id(), text);
    text.flush();
  }

  private void changes(Call call) {
    Job job = JobRoutes.find(store.jobs(), call);
    StringBuilder text = new StringBuilder();
    try {
      long unused = new ChangesCsv(store, decimal(call)).write(job, text);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    Downloads.name(call, "text/csv; charset=utf-8", "job-" + job.id() + "-changes.csv");
    call.ctx().result(text.toString().getBytes(StandardCharsets.UTF_8));
  }

  private void statistics(Call call) {
    JobReport report =
        gather(call, new JobReport.Printing(clock.instant(), UTC, ViewUnit.MM, false));
    StringBuilder text = new StringBuilder();
    try {
      Csv.figures(report.job(), report.summaries(), decimal(call), text);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    Downloads.name(call, "text/csv; charset=utf-8", "job-" + report.job().id() + "-statistics.csv");
    call.ctx().result(text.toString().getBytes(StandardCharsets.UTF_8));
  }

  private void qif(Call call) {
    Job job = JobRoutes.find(store.jobs(), call);
    Downloads.stream(
        call, "application/xml", "job-" + job.id() + ".qif", out -> qif.write(job.id(), out));
  }

  private void report(Call call) {
    String token = token(call);
    JobReport report =
        gather(
            call,
            new JobReport.Printing(
                clock.instant(),
                zone(call.text("zone", "UTC")),
                unit(call),
                !call.flag("certificate")));
    byte[] pdf = underWay.write(report, token);
    Downloads.name(call, "application/pdf", "job-" + report.job().id() + "-report.pdf");
    call.ctx().result(pdf);
  }

  private JobReport gather(Call call, JobReport.Printing printing) {
    return reports.of(JobRoutes.find(store.jobs(), call).id(), printing);
  }

  /** Of a CSV file's numbers. */
  static DecimalMark decimal(Call call) {
    return call.choice(DECIMAL, DecimalMark.class).orElse(DecimalMark.POINT);
  }

  /** Of the lengths of a report. */
  static ViewUnit unit(Call call) {
    return call.choice(Call.UNIT, ViewUnit.class).orElse(ViewUnit.MM);
  }

  private static String token(Call call) {
    String token = call.text(TOKEN, "");
    if (!token.matches("[A-Za-z0-9-]{0,64}")) {
      throw new BadInput(TOKEN, token, "is not a token", "up to 64 letters, digits and hyphens");
    }
    return token;
  }

  /** By its name; {@link BadInput} for one that is not known. */
  static ZoneId zone(String name) {
    try {
      return ZoneId.of(name);
    } catch (DateTimeException e) {
      throw new BadInput("zone", name, "is not known", "for example UTC, Europe/Vienna");
    }
  }
}
