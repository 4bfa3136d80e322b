package org.chordlog.web;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Bridge;
import org.chordlog.measure.Calibration;
import org.chordlog.measure.Calibration.Fitted;
import org.chordlog.measure.Check;
import org.chordlog.measure.Recorded;
import org.chordlog.station.Stations;
import org.chordlog.store.Gauges;
import org.chordlog.web.http.Faults;
import org.chordlog.web.http.Times;
import org.jspecify.annotations.Nullable;

/**
 * Calibrations as CSV, one a row: where, when, until when, by whom; effective span, zero offset and
 * foot radius with their standard uncertainties (u_) and covariances, mm and mm²; degrees of
 * freedom, empty where not limited. A certificate from elsewhere is a row of the same kind.
 */
final class CalibrationCsv {
  private static final String STATION = "station";
  private static final String BRIDGE = "bridge";
  private static final String TAKEN = "taken_utc";
  private static final String DUE = "due_utc";
  private static final String BY = "taken_by";
  private static final String SPAN = "span_mm";
  private static final String ZERO = "zero_offset_mm";
  private static final String FOOT = "foot_radius_mm";
  private static final List<String> UNCERTAINTIES =
      List.of("u_span_mm", "u_zero_offset_mm", "u_foot_radius_mm");
  private static final List<String> COVARIANCES =
      List.of("cov_span_zero_mm2", "cov_span_foot_mm2", "cov_zero_foot_mm2");
  private static final String DEGREES = "degrees_of_freedom";
  private static final String SUMMARY = "summary";
  private static final TableFile.Form FORM = new TableFile.Form("calibrations", columns(), SPAN);

  /** A span further from that of the bridge is a slip of the pen or another bridge. */
  private static final double FAR = 0.05;

  private static final double SAME_MM = 1e-9;
  private static final int MOST = 500;

  private final Gauges gauges;
  private final Stations stations;
  private final long nowMicros;

  CalibrationCsv(Gauges gauges, Stations stations, long nowMicros) {
    this.gauges = gauges;
    this.stations = stations;
    this.nowMicros = nowMicros;
  }

  private static List<String> columns() {
    List<String> columns = new ArrayList<>(List.of(STATION, BRIDGE, TAKEN, DUE, BY));
    columns.addAll(List.of(SPAN, ZERO, FOOT));
    columns.addAll(UNCERTAINTIES);
    columns.addAll(COVARIANCES);
    columns.addAll(List.of(DEGREES, SUMMARY));
    return List.copyOf(columns);
  }

  /** All calibrations, the oldest first, so that the file can be read in again. */
  String text() {
    StringBuilder out = new StringBuilder();
    CSVFormat format =
        CSVFormat.RFC4180.builder().setHeader(FORM.columns().toArray(String[]::new)).get();
    try (CSVPrinter printer = new CSVPrinter(out, format)) {
      List<Calibration> all = new ArrayList<>(gauges.calibrations(MOST));
      all.sort(Comparator.comparingLong(Calibration::id));
      for (Calibration each : all) {
        printer.printRecord(cells(each));
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return out.toString();
  }

  private List<String> cells(Calibration c) {
    List<List<Double>> v = c.covariance();
    List<String> cells = new ArrayList<>(List.of(c.station(), nameOf(c.bridgeId())));
    cells.addAll(List.of(Times.iso(c.takenAtMicros()), Times.iso(c.dueAtMicros()), c.takenBy()));
    for (double mm : new double[] {c.spanMm(), c.zeroOffsetMm(), c.footRadiusMm()}) {
      cells.add(Numbers.plain(mm));
    }
    for (int i = 0; i < 3; i++) {
      cells.add(Numbers.plain(Math.sqrt(v.get(i).get(i))));
    }
    cells.add(Numbers.plain(v.get(0).get(1)));
    cells.add(Numbers.plain(v.get(0).get(2)));
    cells.add(Numbers.plain(v.get(1).get(2)));
    cells.add(Double.isFinite(c.degreesOfFreedom()) ? Numbers.plain(c.degreesOfFreedom()) : "");
    cells.add(c.summary());
    return cells;
  }

  private String nameOf(long bridge) {
    return gauges.bridge(bridge).map(Bridge::name).orElse("");
  }

  /** Adds what is new, all or nothing; {@link BadInput} with every fault by line and column. */
  ImportedRows add(String csv, boolean create) {
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
        String name = read.station() + ", " + nameOf(read.bridgeId());
        rows.add(new ImportedRows.Row(row.line(), name, isNew));
        if (isNew) {
          known.add(read);
          added.add(read);
        }
      }
    }
    faults.refuse();
    if (create) {
      added.forEach(each -> gauges.add(each));
      added.stream().map(Calibration::station).distinct().forEach(s -> stations.at(s).refresh());
    }
    return ImportedRows.of(rows, create);
  }

  private static boolean sameTime(Calibration a, Calibration b) {
    return sameGauge(a, b) && a.takenAtMicros() == b.takenAtMicros();
  }

  private static boolean sameGauge(Calibration a, Calibration b) {
    return a.station().equals(b.station()) && a.bridgeId() == b.bridgeId();
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
            fitted(row, bridge),
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

  /** What a certificate does not state was not fitted: as the bridge is stated, without scatter. */
  private static Fitted fitted(TableFile.Row row, Bridge bridge) {
    double span = row.neededLength(SPAN);
    if (!(Math.abs(span / bridge.spanMm() - 1) <= FAR)) {
      String allowed = "within 5 % of the bridge's " + Numbers.plain(bridge.spanMm()) + " mm";
      throw new BadInput(SPAN, Numbers.plain(span), "is far from the bridge's span", allowed);
    }
    Double zero = row.length(ZERO);
    Double foot = row.length(FOOT);
    Double degrees = row.number(DEGREES, "a number above 0, or empty where not limited");
    return new Fitted(
        span,
        zero == null ? 0 : zero,
        Check.notNegative(FOOT, foot == null ? bridge.footRadiusMm() : foot),
        covariance(row),
        degrees == null ? Double.POSITIVE_INFINITY : Check.positive(DEGREES, degrees));
  }

  private static List<List<Double>> covariance(TableFile.Row row) {
    double[] u = new double[3];
    String unused = row.needed(UNCERTAINTIES.get(0), "the standard uncertainty of the span, mm");
    for (int i = 0; i < 3; i++) {
      u[i] = Check.notNegative(UNCERTAINTIES.get(i), or0(row.length(UNCERTAINTIES.get(i))));
    }
    double[] c = new double[3];
    for (int i = 0; i < 3; i++) {
      c[i] = or0(row.number(COVARIANCES.get(i), "a covariance in mm²"));
      double most = i == 0 ? u[0] * u[1] : i == 1 ? u[0] * u[2] : u[1] * u[2];
      if (Math.abs(c[i]) > most * (1 + 1e-9)) {
        String allowed = "at most the product of the two uncertainties, " + most;
        throw new BadInput(COVARIANCES.get(i), c[i], "is too large", allowed);
      }
    }
    return List.of(
        List.of(u[0] * u[0], c[0], c[1]),
        List.of(c[0], u[1] * u[1], c[2]),
        List.of(c[1], c[2], u[2] * u[2]));
  }

  private static double or0(@Nullable Double value) {
    return value == null ? 0 : value;
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
