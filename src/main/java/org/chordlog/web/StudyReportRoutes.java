package org.chordlog.web;

import java.time.Clock;
import java.time.ZoneId;
import java.util.List;
import org.chordlog.report.StudyPdf;
import org.chordlog.report.StudyReport;
import org.chordlog.store.Store;
import org.chordlog.web.http.Call;
import org.chordlog.web.http.Downloads;
import org.chordlog.web.http.Refusal;
import org.chordlog.web.http.Route;

/** The report of a complete study. */
final class StudyReportRoutes {
  private final Store store;
  private final Clock clock;

  StudyReportRoutes(Store store, Clock clock) {
    this.store = store;
    this.clock = clock;
  }

  List<Route> routes() {
    return List.of(
        Route.get(
                "/api/studies/{study}/report.pdf",
                "The report of a complete study, three pages at most; refused before")
            .query("zone", "string", "time zone of the times printed, UTC if left out")
            .query(Call.UNIT, "string", ExportRoutes.UNIT_WORDS)
            .sends("application/pdf", this::report));
  }

  private void report(Call call) {
    long id = call.id("study");
    if (store.studies().find(id).isEmpty()) {
      throw Refusal.notFound("study", id);
    }
    ZoneId zone = ExportRoutes.zone(call.text("zone", "UTC"));
    StudyReport.Printing printing =
        new StudyReport.Printing(clock.instant(), zone, ExportRoutes.unit(call));
    byte[] pdf = StudyPdf.write(new StudyReports(store).of(id, printing));
    Downloads.name(call, "application/pdf", "study-" + id + "-report.pdf");
    call.ctx().result(pdf);
  }
}
