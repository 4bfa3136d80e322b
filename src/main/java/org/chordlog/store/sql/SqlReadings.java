package org.chordlog.store.sql;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import org.chordlog.measure.Exclusion;
import org.chordlog.measure.PassedProfile;
import org.chordlog.measure.Reading;
import org.chordlog.measure.SetUp;
import org.chordlog.store.KeptReading;
import org.chordlog.store.PieceMove;
import org.chordlog.store.ReadingQuery;
import org.chordlog.store.Readings;
import org.jspecify.annotations.Nullable;

record SqlReadings(Database database, SetUps setUps, ExclusionRows exclusions) implements Readings {
  private static final String PRODUCTS = "WHERE r.job_id = ? AND r.kind = 'PRODUCT' ";

  @Override
  public CompletableFuture<Reading> append(Reading reading, List<PassedProfile> profiles) {
    return database.writes().append(reading, profiles);
  }

  @Override
  public CompletableFuture<List<Reading>> move(PieceMove move) {
    return database.writes().move(move);
  }

  @Override
  public List<PassedProfile> profiles(long readingId) {
    return database.read(
        connection ->
            Sql.list(
                connection,
                ProfileRow.SELECT + "WHERE reading_id = ? ORDER BY pass",
                ProfileRow::map,
                readingId));
  }

  @Override
  public Optional<Reading> find(long id) {
    return database.one(
        Unreadable.Kind.READING, ReadingRow.SELECT + "WHERE r.id = ?", ReadingRow::map, id);
  }

  @Override
  public List<Reading> ofJob(long jobId, long afterId, int limit) {
    return list(PRODUCTS + "AND r.id > ? ORDER BY r.id LIMIT ?", jobId, afterId, limit);
  }

  @Override
  public List<Reading> latestOfJob(long jobId, long beforeId, int limit) {
    return list(PRODUCTS + "AND r.id < ? ORDER BY r.id DESC LIMIT ?", jobId, beforeId, limit);
  }

  @Override
  public List<Reading> search(ReadingQuery query) {
    return database.read(
        connection -> new ReadingSearch(query).list(connection, database.unreadable()));
  }

  @Override
  public List<Reading> ofMachine(String machine, long afterId, int limit) {
    return database.read(
        connection ->
            new MachineReadings(connection, machine, database.unreadable()).list(afterId, limit));
  }

  /** By each job's index of time; the bridge is part of the set-up. */
  @Override
  public List<Reading> ofBridge(
      String station, long bridgeId, long afterMicros, long beforeMicros, long afterId, int limit) {
    return list(
        "WHERE r.job_id IN (SELECT id FROM job) AND r.wall_micros > ? AND r.wall_micros < ?"
            + " AND r.station = ? AND r.id > ? AND r.kind = 'PRODUCT' AND (SELECT "
            + database.dialect().wholeNumber("body", "bridge", "id")
            + " FROM set_up WHERE id = r.set_up_id) = ? AND coalesce("
            + ReadingSearch.NEWEST_EXCLUSION
            + ", 0) = 0 ORDER BY r.id LIMIT ?",
        afterMicros,
        beforeMicros,
        station,
        afterId,
        bridgeId,
        limit);
  }

  @Override
  public List<Reading> latestProfiled(String machine, long beforeId, int limit) {
    return list(
        "WHERE r.id IN (SELECT p.reading_id FROM profile p WHERE p.pass = 1 AND p.reading_id < ?)"
            + " AND r.job_id IN (SELECT id FROM job WHERE machine = ?) AND r.kind = 'PRODUCT'"
            + " AND coalesce("
            + ReadingSearch.NEWEST_EXCLUSION
            + ", 0) = 0 ORDER BY r.id DESC LIMIT ?",
        beforeId,
        machine,
        limit);
  }

  @Override
  public List<Reading> all(long afterId, int limit) {
    return list("WHERE r.id > ? ORDER BY r.id LIMIT ?", afterId, limit);
  }

  @Override
  public long countOfJob(long jobId) {
    return number("SELECT readings FROM job_total WHERE job_id = ?", jobId);
  }

  @Override
  public Map<String, Long> machinesSince(long afterId) {
    Map<String, Long> machines = new HashMap<>();
    database.read(
        connection ->
            Sql.list(
                connection,
                "SELECT j.machine, max(t.last_reading_id) FROM job_total t JOIN job j ON j.id ="
                    + " t.job_id WHERE t.last_reading_id > ? GROUP BY j.machine",
                row -> machines.put(row.getString(1), row.getLong(2)),
                afterId));
    return machines;
  }

  /** By each job's index of time. */
  @Override
  public Optional<Long> firstOfMachine(String machine, long sinceMicros) {
    long first =
        number(
            "SELECT coalesce(min((SELECT r.id FROM reading r WHERE r.job_id = j.id AND r.kind ="
                + " 'PRODUCT' AND r.wall_micros >= ? ORDER BY r.wall_micros, r.id LIMIT 1)), 0)"
                + " FROM job j WHERE j.machine = ?",
            sinceMicros,
            machine);
    return first == 0 ? Optional.empty() : Optional.of(first);
  }

  @Override
  public long countOfMachine(String machine) {
    return number(
        "SELECT coalesce(sum(t.readings), 0) FROM job j JOIN job_total t ON t.job_id = j.id"
            + " WHERE j.machine = ?",
        machine);
  }

  @Override
  public long lastId() {
    return number("SELECT max(id) FROM reading");
  }

  @Override
  public long lastSequence(String station) {
    return number("SELECT max(station_sequence) FROM reading WHERE station = ?", station);
  }

  @Override
  public long keep(SetUp setUp) {
    return setUps.keep(setUp);
  }

  @Override
  public Optional<SetUp> setUp(long id) {
    return setUps.find(id);
  }

  @Override
  public Optional<String> setUpText(long id) {
    return setUps.text(id);
  }

  @Override
  public Exclusion add(Exclusion exclusion) {
    return exclusions.add(exclusion);
  }

  @Override
  public List<Exclusion> exclusionsOfJob(long jobId) {
    return exclusionsOfJob(jobId, 0);
  }

  @Override
  public List<Exclusion> exclusionsOfJob(long jobId, long afterId) {
    return exclusions.list("job_id = ? AND id > ?", jobId, afterId);
  }

  @Override
  public List<KeptReading> withExclusions(List<Reading> readings) {
    return exclusions.join(readings);
  }

  @Override
  public List<Exclusion> exclusionsOfMachine(String machine, long afterId) {
    return exclusions.list(
        "job_id IN (SELECT id FROM job WHERE machine = ?) AND id > ?", machine, afterId);
  }

  private List<Reading> list(String where, @Nullable Object... arguments) {
    return database.list(
        Unreadable.Kind.READING, ReadingRow.SELECT + where, ReadingRow::map, arguments);
  }

  private long number(String sql, @Nullable Object... arguments) {
    return database.read(connection -> Sql.number(connection, sql, arguments));
  }
}
