package org.chordlog.store.sql;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.chordlog.measure.Bridge;
import org.chordlog.measure.Calibration;
import org.chordlog.measure.InterimCheck;
import org.chordlog.measure.Master;
import org.chordlog.measure.Mounted;
import org.chordlog.measure.Zero;
import org.chordlog.store.Gauges;
import org.jspecify.annotations.Nullable;

record SqlGauges(Database database) implements Gauges {
  private static final String FROM_FILE = "from a file";

  private static final String NEWEST_OF_BRIDGE =
      "WHERE station = ? AND bridge_id = ? ORDER BY id DESC LIMIT ?";

  @Override
  public Bridge add(Bridge bridge, String by) {
    return database.write(connection -> Bridges.insert(connection, bridge, by));
  }

  @Override
  public Bridge replace(long bridgeId, Bridge bridge, String by, String why) {
    return database.write(connection -> Bridges.replace(connection, bridgeId, bridge, by, why));
  }

  @Override
  public Optional<Bridge> bridge(long id) {
    return bridges("WHERE id = ?", id).stream().findFirst();
  }

  @Override
  public List<Bridge> bridges() {
    return bridges("WHERE replaced_by IS NULL ORDER BY id");
  }

  @Override
  public void mount(String station, long bridgeId, long atMicros, String by) {
    database.write(connection -> Bridges.mount(connection, station, bridgeId, atMicros, by));
  }

  @Override
  public Optional<Bridge> mountedOn(String station) {
    return bridges(
            "WHERE id = (SELECT bridge_id FROM mount WHERE station = ? ORDER BY id DESC LIMIT 1)",
            station)
        .stream()
        .findFirst();
  }

  @Override
  public Optional<Mounted> mounted(String station) {
    return mountedOn(station).map(bridge -> new Mounted(bridge, otherAt(station, bridge.id())));
  }

  private @Nullable Long otherAt(String station, long bridgeId) {
    return rows(
            "SELECT at_micros FROM mount WHERE station = ? AND bridge_id <> ?"
                + " ORDER BY id DESC LIMIT 1",
            row -> row.getLong("at_micros"),
            station,
            bridgeId)
        .stream()
        .findFirst()
        .orElse(null);
  }

  private List<Bridge> bridges(String where, @Nullable Object... arguments) {
    return rows("SELECT * FROM bridge " + where, Bridges::map, arguments);
  }

  @Override
  public Zero add(Zero zero) {
    return database.write(connection -> GaugeRows.insert(connection, zero));
  }

  @Override
  public Optional<Zero> latestZero(String station) {
    return zeros(station, 1).stream().findFirst();
  }

  @Override
  public List<Zero> zeros(String station, int limit) {
    return rows(
        "SELECT * FROM zero WHERE station = ? ORDER BY id DESC LIMIT ?",
        GaugeRows::zero,
        station,
        limit);
  }

  @Override
  public List<Zero> zeros(String station, long fromMicros, long toMicros) {
    return rows(
        "SELECT * FROM zero WHERE station = ? AND taken_micros BETWEEN ? AND ? ORDER BY id",
        GaugeRows::zero,
        station,
        fromMicros,
        toMicros);
  }

  @Override
  public Calibration add(Calibration calibration) {
    return database.write(connection -> CalibrationRow.insert(connection, calibration));
  }

  @Override
  public List<Calibration> importCalibrations(List<Calibration> calibrations, String by) {
    return database.write(
        connection -> {
          List<Calibration> stored = new ArrayList<>();
          for (Calibration each : calibrations) {
            Calibration kept = CalibrationRow.insert(connection, each);
            CalibrationRow.record(connection, kept, by, FROM_FILE);
            stored.add(kept);
          }
          return List.copyOf(stored);
        });
  }

  @Override
  public Optional<Calibration> latestCalibration(String station, long bridgeId) {
    return rows(CalibrationRow.SELECT + NEWEST_OF_BRIDGE, CalibrationRow::map, station, bridgeId, 1)
        .stream()
        .findFirst();
  }

  @Override
  public List<Calibration> calibrations(int limit) {
    return rows(CalibrationRow.SELECT + "ORDER BY id DESC LIMIT ?", CalibrationRow::map, limit);
  }

  @Override
  public Master add(Master master, String by) {
    return database.write(connection -> Masters.insert(connection, master, by, "new"));
  }

  @Override
  public List<Master> importMasters(List<Master> masters, String by) {
    return database.write(
        connection -> {
          List<Master> stored = new ArrayList<>();
          for (Master each : masters) {
            stored.add(Masters.insert(connection, each, by, FROM_FILE));
          }
          return List.copyOf(stored);
        });
  }

  @Override
  public List<Master> masters() {
    return rows("SELECT * FROM master ORDER BY id", Masters::map);
  }

  @Override
  public InterimCheck add(InterimCheck check) {
    return database.write(connection -> GaugeRows.insert(connection, check));
  }

  @Override
  public List<InterimCheck> checks(String station, long bridgeId, int limit) {
    return rows(
        "SELECT * FROM interim_check " + NEWEST_OF_BRIDGE,
        GaugeRows::check,
        station,
        bridgeId,
        limit);
  }

  private <T> List<T> rows(String sql, Sql.Mapper<T> mapper, @Nullable Object... arguments) {
    return database.read(connection -> Sql.list(connection, sql, mapper, arguments));
  }
}
