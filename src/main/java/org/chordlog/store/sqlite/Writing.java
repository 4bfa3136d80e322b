package org.chordlog.store.sqlite;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import org.chordlog.measure.PassedProfile;
import org.chordlog.measure.Reading;
import org.chordlog.measure.Sample;
import org.chordlog.store.PieceMove;
import org.chordlog.store.StoreHealth;
import org.chordlog.store.StoreSettings;
import org.chordlog.store.sql.Sql;
import org.chordlog.store.sql.Writes;

/** The writer, the samples that wait for it, the counts of both, and what was announced. */
record Writing(
    Writer writer, TraceWriter traces, WriterMeter meter, Sealer sealer, Announced announced)
    implements Writes, AutoCloseable {

  static Writing start(Connection connection, long run, Announced announced, StoreSettings settings)
      throws SQLException {
    return start(connection, run, announced, settings, new Sealer(connection));
  }

  static Writing start(
      Connection connection, long run, Announced announced, StoreSettings settings, Sealer sealer)
      throws SQLException {
    WriterMeter meter = new WriterMeter();
    TraceWriter traces = new TraceWriter(connection, settings.tickMillis());
    ReadingWriter readings = new ReadingWriter(connection, run, sealer);
    Transactions transactions =
        new Transactions(connection, readings, traces, sealer, announced, meter);
    Writer writer = new Writer(transactions, sealer, run, meter, settings);
    writer.start();
    return new Writing(writer, traces, meter, sealer, announced);
  }

  @Override
  public CompletableFuture<Reading> append(Reading reading, List<PassedProfile> profiles) {
    return writer.append(reading, profiles);
  }

  @Override
  public CompletableFuture<List<Reading>> move(PieceMove move) {
    return writer.move(move);
  }

  @Override
  public boolean append(String station, List<Sample> samples) {
    if (meter.fault().isEmpty()) {
      traces.awaitRoom(station, samples.size());
    }
    boolean taken = samples.isEmpty() || traces.append(station, samples);
    if (!taken) {
      meter.samplesDropped(samples.size());
    } else if (traces.flushDue()) {
      writer.wake();
    }
    return taken;
  }

  @Override
  public <T> T call(Sql.Body<T> body) {
    return writer.call(body);
  }

  StoreHealth health(Path file, List<String> warnings) {
    return new StoreHealth(
        meter.fault().isEmpty(),
        meter.fault(),
        warnings,
        new StoreHealth.Queue(writer.queued(), Writer.CAPACITY),
        meter.counts(),
        meter.commits(),
        Connections.space(file));
  }

  @Override
  public void close() {
    writer.close();
    announced.close();
  }
}
