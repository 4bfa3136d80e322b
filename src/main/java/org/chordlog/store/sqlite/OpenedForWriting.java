package org.chordlog.store.sqlite;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import org.chordlog.file.FileTrouble;
import org.chordlog.measure.BadInput;
import org.chordlog.store.MeasuringPart;
import org.chordlog.store.StoreHealth;
import org.chordlog.store.StoreSettings;
import org.chordlog.store.sql.Database;
import org.chordlog.store.sql.Now;
import org.chordlog.store.sql.Sql;
import org.chordlog.store.sql.Unreadable;

/**
 * Lock, connections, the writer and its helpers. The connection belongs to the writer's thread
 * between {@link #open} and {@link #close}.
 */
record OpenedForWriting(
    Path file,
    DataLock lock,
    Connection connection,
    Readers readers,
    Database database,
    Writing writing,
    Housekeeper housekeeper,
    WalCheckpointer checkpointer,
    SealClock seals)
    implements Opened {
  private static final int TICKS_A_CHECKPOINT = 4;

  static OpenedForWriting open(Path directory, StoreSettings settings) {
    DataLock lock = DataLock.take(directory);
    try {
      return open(directory.resolve(SqliteStore.FILE_NAME), lock, settings);
    } catch (SQLException e) {
      lock.close();
      throw new BadInput(
          "data",
          directory,
          "can't be opened: " + Failures.sentence(e),
          "a database that can be written");
    } catch (RuntimeException e) {
      lock.close();
      throw e;
    }
  }

  private static OpenedForWriting open(Path file, DataLock lock, StoreSettings settings)
      throws SQLException {
    refuseOther(file);
    SealKeyPlace.require(file);
    Damage.setAside(file);
    createOwn(file);
    Connection connection = Connections.writer(file);
    try {
      Schema.requireSoundSqlite(connection);
      Schema.migrate(connection, file);
      return start(file, lock, connection, settings);
    } catch (SQLException | RuntimeException e) {
      connection.close();
      throw e;
    }
  }

  private static void createOwn(Path file) {
    try {
      OwnFiles.create(file);
    } catch (IOException e) {
      throw new BadInput("data", file, FileTrouble.writing(e), "a directory that can be written");
    }
  }

  private static void refuseOther(Path file) throws SQLException {
    if (Files.exists(file)) {
      try (Connection connection = Connections.reader(file)) {
        ServiceClaim.refuseOther(file, connection);
      } catch (SQLException e) {
        if (!Failures.damaged(e)) {
          throw e;
        }
      }
    }
  }

  private static OpenedForWriting start(
      Path file, DataLock lock, Connection connection, StoreSettings settings) throws SQLException {
    ServiceClaim.put(file, connection);
    Announced announced = Announced.open(file, connection);
    String uuid = SealEntry.uuid(connection);
    Writing writing = Writing.start(connection, run(connection), announced, settings);
    WalCheckpointer checkpointer = new WalCheckpointer(file, writing.meter()::lastCommitMicros);
    checkpointer.start(TICKS_A_CHECKPOINT * settings.tickMillis());
    Readers readers = new Readers(file);
    Database database = new Database(readers, writing, new Unreadable(), new SqliteDialect());
    Housekeeper housekeeper = new Housekeeper(file, database, writing, settings);
    housekeeper.start();
    SealClock seals = new SealClock(file, uuid, writing.sealer());
    seals.start();
    return new OpenedForWriting(
        file, lock, connection, readers, database, writing, housekeeper, checkpointer, seals);
  }

  private static long run(Connection connection) throws SQLException {
    return Sql.insert(
        connection,
        "INSERT INTO run (started_micros, version) VALUES (?, ?)",
        Now.micros(),
        MeasuringPart.version());
  }

  @Override
  public String epoch() {
    return Announced.epoch(file);
  }

  @Override
  public StoreHealth health() {
    List<String> warnings = new ArrayList<>(housekeeper.warnings());
    warnings.addAll(seals.warnings());
    database.unreadable().found().forEach(each -> warnings.add(each.sentence()));
    return writing.health(file, warnings);
  }

  @Override
  public void close() {
    Closing closing = new Closing();
    closing.step(housekeeper::close);
    closing.step(writing::close);
    closing.step(seals::close);
    closing.step(checkpointer::close);
    closing.step(readers::close);
    closing.step(() -> ServiceClaim.drop(connection));
    closing.step(() -> Sql.run(connection, Transactions.EMPTY_WAL));
    closing.step(connection::close);
    closing.step(lock::close);
    closing.tell();
  }
}
