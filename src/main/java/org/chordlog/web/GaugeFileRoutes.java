package org.chordlog.web;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Objects;
import org.chordlog.account.Right;
import org.chordlog.station.Stations;
import org.chordlog.store.Gauges;
import org.chordlog.web.http.Call;
import org.chordlog.web.http.Downloads;
import org.chordlog.web.http.Faults;
import org.chordlog.web.http.Needed;
import org.chordlog.web.http.Route;
import org.chordlog.web.http.Times;
import org.jspecify.annotations.Nullable;

/** Masters and calibrations in and out as files. */
final class GaugeFileRoutes {
  private final Gauges gauges;
  private final Stations stations;
  private final Clock clock;

  GaugeFileRoutes(Gauges gauges, Stations stations, Clock clock) {
    this.gauges = gauges;
    this.stations = stations;
    this.clock = clock;
  }

  /** The text of a file, and whether its rows are added or only looked at. */
  record FileForm(
      @JsonPropertyDescription("as the same file that is got; lengths in mm") @Needed
          @Nullable String csv,
      @JsonPropertyDescription("false or left out: only looked at") @Nullable Boolean create) {
    String text() {
      Faults faults = new Faults();
      faults.needed("csv", csv, "the text of the file");
      faults.refuse();
      return Objects.requireNonNull(csv);
    }

    boolean creates() {
      return Boolean.TRUE.equals(create);
    }
  }

  List<Route> routes() {
    return List.of(
        Route.get("/api/masters.csv", "Masters as CSV").sends("text/csv", this::masters),
        Route.post(
                Right.GAUGE,
                "/api/masters/import",
                "Reads masters from CSV and adds what is new, all or none")
            .body(FileForm.class)
            .answers(ImportedRows.class, this::readMasters),
        Route.get("/api/calibrations.csv", "Calibrations of all stations as CSV")
            .sends("text/csv", this::calibrations),
        Route.post(
                Right.GAUGE,
                "/api/calibrations/import",
                "Reads calibrations and certificates from CSV and adds what is new, all or none")
            .body(FileForm.class)
            .answers(ImportedRows.class, this::readCalibrations));
  }

  private void masters(Call call) {
    Downloads.send(call, "text/csv", "masters.csv", masterCsv().text());
  }

  private ImportedRows readMasters(Call call) {
    FileForm form = call.body(FileForm.class);
    return masterCsv().add(form.text(), form.creates(), call.by());
  }

  private MasterCsv masterCsv() {
    return new MasterCsv(gauges, MasterReach.of(gauges, stations));
  }

  private void calibrations(Call call) {
    Downloads.send(call, "text/csv", "calibrations.csv", new CalibrationCsv(gauges).text());
  }

  private ImportedRows readCalibrations(Call call) {
    FileForm form = call.body(FileForm.class);
    long now = Times.micros(Instant.now(clock));
    return new CalibrationImport(gauges, stations, now).add(form.text(), form.creates(), call.by());
  }
}
