package org.chordlog.store.sqlite;

import java.io.File;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.List;
import org.chordlog.measure.BadInput;
import org.chordlog.store.StoreException;
import org.chordlog.store.StoreHealth;

/** What is open while the store is: lock, connections, the writer and its buffers. */
record Opened(
    Path file,
    DataLock lock,
    Connection connection,
    Readers readers,
    Writer writer,
    TraceWriter traces,
    WriterMeter meter)
    implements AutoCloseable {

  static Opened open(Path directory, WriterTiming timing) {
    DataLock lock = DataLock.take(directory);
    try {
      return open(directory.resolve(SqliteStore.FILE_NAME), lock, timing);
    } catch (SQLException e) {
      lock.close();
      throw new BadInput(
          "data", directory, "can't be opened: " + Failures.sentence(e), "a healthy directory");
    } catch (RuntimeException e) {
      lock.close();
      throw e;
    }
  }

  private static Opened open(Path file, DataLock lock, WriterTiming timing) throws SQLException {
    Connection connection = Connections.writer(file);
    try {
      Schema.requireSoundSqlite(connection);
      Schema.migrate(connection, file);
      return start(file, lock, connection, timing);
    } catch (SQLException | RuntimeException e) {
      connection.close();
      throw e;
    }
  }

  private static Opened start(Path file, DataLock lock, Connection connection, WriterTiming timing)
      throws SQLException {
    long run =
        Sql.insert(
            connection,
            "INSERT INTO run (started_micros, version) VALUES (?, ?)",
            Now.micros(),
            version());
    WriterMeter meter = new WriterMeter();
    TraceWriter traces = new TraceWriter(connection, timing.tickMillis());
    Transactions transactions =
        new Transactions(connection, new ReadingWriter(connection, run), traces, meter);
    Writer writer = new Writer(transactions, meter, timing);
    writer.start();
    return new Opened(file, lock, connection, new Readers(file), writer, traces, meter);
  }

  private static String version() {
    String version = SqliteStore.class.getPackage().getImplementationVersion();
    return version == null ? "unpacked" : version;
  }

  StoreHealth health() {
    return new StoreHealth(
        meter.fault().isEmpty(),
        meter.fault(),
        List.of(),
        writer.queued(),
        Writer.CAPACITY,
        meter.committedReadings(),
        meter.droppedReadings(),
        meter.keptSamples(),
        meter.droppedSamples(),
        meter.lastCommitMicros(),
        meter.commitMillisP95(),
        file.toFile().length(),
        new File(file + "-wal").length(),
        file.toFile().getUsableSpace());
  }

  @Override
  public void close() {
    writer.close();
    try {
      readers.close();
      Sql.run(connection, "PRAGMA wal_checkpoint(TRUNCATE)");
      connection.close();
    } catch (SQLException e) {
      throw new StoreException("the database does not close: " + e.getMessage(), e);
    } finally {
      lock.close();
    }
  }
}
