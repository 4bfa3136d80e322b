package org.chordlog.store.sql;

import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.function.Supplier;
import org.chordlog.measure.PassedProfile;
import org.chordlog.measure.Reading;
import org.chordlog.measure.Sample;
import org.chordlog.store.PieceMove;
import org.chordlog.store.StoreException;

/** What changes the database; any thread. */
public interface Writes {
  CompletableFuture<Reading> append(Reading reading, List<PassedProfile> profiles);

  /** As {@link org.chordlog.store.Readings#move}. */
  CompletableFuture<List<Reading>> move(PieceMove move);

  /** False when they were dropped. */
  boolean append(String station, List<Sample> samples);

  /** Committed when it returns. */
  <T> T call(Sql.Body<T> body);

  /** Refuses every change, with a new one of those exceptions each time. */
  record Refused(Supplier<? extends RuntimeException> refusal) implements Writes {
    /** The database is open for reading only. */
    public static Refused readingOnly() {
      return new Refused(() -> new StoreException("the store is open for reading only", null));
    }

    @Override
    public CompletableFuture<Reading> append(Reading reading, List<PassedProfile> profiles) {
      return CompletableFuture.failedFuture(refusal.get());
    }

    @Override
    public CompletableFuture<List<Reading>> move(PieceMove move) {
      return CompletableFuture.failedFuture(refusal.get());
    }

    @Override
    public boolean append(String station, List<Sample> samples) {
      throw refusal.get();
    }

    @Override
    public <T> T call(Sql.Body<T> body) {
      throw refusal.get();
    }
  }
}
