package org.chordlog.web;

import static org.chordlog.web.CalibrationColumns.BRIDGE;
import static org.chordlog.web.CalibrationColumns.BY;
import static org.chordlog.web.CalibrationColumns.DUE;
import static org.chordlog.web.CalibrationColumns.FORM;
import static org.chordlog.web.CalibrationColumns.MOST;
import static org.chordlog.web.CalibrationColumns.SPAN;
import static org.chordlog.web.CalibrationColumns.STATION;
import static org.chordlog.web.CalibrationColumns.SUMMARY;
import static org.chordlog.web.CalibrationColumns.TAKEN;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Bridge;
import org.chordlog.measure.Calibration;
import org.chordlog.measure.Recorded;
import org.chordlog.station.Stations;
import org.chordlog.store.Gauges;
import org.chordlog.verdict.StoredWords;
import org.chordlog.web.http.Faults;
import org.chordlog.web.http.Times;

/** Calibrations and certificates in from CSV, by {@link CalibrationColumns}. */
final class CalibrationImport {
  private static final double SAME_MM = 1e-9;

  private final Gauges gauges;
  private final Stations stations;
  private final long nowMicros;

  CalibrationImport(Gauges gauges, Stations stations, long nowMicros) {
    this.gauges = gauges;
    this.stations = stations;
    this.nowMicros = nowMicros;
  }

  /** Adds what is new, all or nothing; {@link BadInput} with every fault by line and column. */
  ImportedRows add(String csv, boolean create, String by) {
    Faults faults = new Faults();
    List<Calibration> known = new ArrayList<>(gauges.calibrations(MOST));
    List<Calibration> added = new ArrayList<>();
    List<ImportedRows.Row> rows = new ArrayList<>();
    for (TableFile.Row row : TableFile.rows(csv, FORM)) {
      Calibration read =
          faults.made(
              "line " + row.line() + ", column ", () -> calibration(row, List.copyOf(known)));
      if (read != null) {
        boolean isNew = known.stream().noneMatch(each -> sameTime(each, read));
        String name = read.station() + ", " + row.text(BRIDGE);
        rows.add(new ImportedRows.Row(row.line(), name, isNew, StoredWords.of(read)));
        if (isNew) {
          known.add(read);
          added.add(read);
        }
      }
    }
    faults.refuse();
    if (create) {
      var unused = gauges.importCalibrations(added, by);
      added.stream().map(Calibration::station).distinct().forEach(s -> stations.at(s).refresh());
    }
    return ImportedRows.of(rows, create);
  }

  private Calibration calibration(TableFile.Row row, List<Calibration> known) {
    String station = station(row);
    Bridge bridge = bridge(row);
    long taken = row.neededTime(TAKEN);
    long due = row.neededTime(DUE);
    if (taken > nowMicros) {
      throw new BadInput(TAKEN, Times.iso(taken), "is in the future", "a time up to now");
    }
    if (due <= taken) {
      throw new BadInput(DUE, Times.iso(due), "is not after " + TAKEN, "a later time");
    }
    Calibration read =
        new Calibration(
            0,
            station,
            bridge.id(),
            FittedCells.read(row, bridge),
            new Recorded(taken, row.needed(BY, "who calibrated, or the certificate")),
            due,
            Objects.requireNonNullElse(row.text(SUMMARY), "from a file"));
    refuseOlder(read, known);
    return read;
  }

  private String station(TableFile.Row row) {
    String name = row.needed(STATION, "the name of a station");
    List<String> names = stations.settings().stream().map(each -> each.name()).toList();
    if (!names.contains(name)) {
      throw new BadInput(STATION, name, "is not a station", String.join(", ", names));
    }
    return name;
  }

  private Bridge bridge(TableFile.Row row) {
    String name = row.needed(BRIDGE, "the name of a bridge in use");
    List<Bridge> known = gauges.bridges();
    return known.stream()
        .filter(each -> each.name().equals(name))
        .findFirst()
        .orElseThrow(
            () ->
                new BadInput(
                    BRIDGE,
                    name,
                    "is not a bridge in use",
                    String.join(", ", known.stream().map(Bridge::name).toList())));
  }

  private static boolean sameTime(Calibration a, Calibration b) {
    return sameGauge(a, b) && a.takenAtMicros() == b.takenAtMicros();
  }

  private static boolean sameGauge(Calibration a, Calibration b) {
    return a.station().equals(b.station()) && a.bridgeId() == b.bridgeId();
  }

  /** The newest record is the one in force, so an older certificate must not follow a newer one. */
  private static void refuseOlder(Calibration read, List<Calibration> known) {
    known.stream()
        .filter(each -> sameTime(each, read))
        .filter(each -> Math.abs(each.spanMm() - read.spanMm()) > SAME_MM)
        .findFirst()
        .ifPresent(
            other -> {
              throw new BadInput(
                  SPAN,
                  Numbers.plain(read.spanMm()),
                  "is not that of the calibration of the same time",
                  Numbers.plain(other.spanMm()) + " mm, or another time");
            });
    if (known.stream().anyMatch(each -> sameTime(each, read))) {
      return;
    }
    known.stream()
        .filter(each -> sameGauge(each, read) && each.takenAtMicros() > read.takenAtMicros())
        .max(Comparator.comparingLong(Calibration::takenAtMicros))
        .ifPresent(
            newer -> {
              throw new BadInput(
                  TAKEN,
                  Times.iso(read.takenAtMicros()),
                  "is before a calibration that is there",
                  "after " + Times.iso(newer.takenAtMicros()));
            });
  }
}
