package org.chordlog.store.sqlite;

import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Semaphore;
import org.chordlog.measure.Reading;
import org.chordlog.measure.Sample;
import org.chordlog.store.Some;
import org.chordlog.store.Store;
import org.jspecify.annotations.Nullable;

/**
 * A process that appends readings as fast as the store takes them and prints the sequence of each
 * that is acknowledged, until it is killed. Arguments: data directory, job id, set-up id.
 */
final class KilledWriter {
  private static final int UNDER_WAY = 50;

  private KilledWriter() {}

  public static void main(String[] arguments) throws InterruptedException {
    Store store = SqliteStore.open(Path.of(arguments[0]), Some.QUICK);
    long jobId = Long.parseLong(arguments[1]);
    long setUpId = Long.parseLong(arguments[2]);
    PrintStream out = new PrintStream(System.out, true, StandardCharsets.UTF_8);
    Semaphore room = new Semaphore(UNDER_WAY);
    long sequence = store.readings().lastSequence("A");
    out.println("started after " + sequence);
    while (true) {
      room.acquire();
      Reading reading = Some.reading("A", ++sequence, jobId, setUpId);
      var unused =
          store
              .readings()
              .append(reading)
              .whenComplete((kept, failure) -> acknowledge(out, room, kept, failure));
      store.traces().append("A", List.of(sample(sequence)));
    }
  }

  private static void acknowledge(
      PrintStream out, Semaphore room, @Nullable Reading kept, @Nullable Throwable failure) {
    out.println(kept == null ? "failed " + failure : "kept " + kept.stationSequence());
    room.release();
  }

  private static Sample sample(long sequence) {
    return new Sample(
        sequence, sequence * 50_000_000L, Some.T0 + sequence * 50_000, sequence % 90, 0, false);
  }
}
