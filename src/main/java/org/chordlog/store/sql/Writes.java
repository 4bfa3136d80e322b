package org.chordlog.store.sql;

import java.util.List;
import java.util.concurrent.CompletableFuture;
import org.chordlog.measure.PassedProfile;
import org.chordlog.measure.Reading;
import org.chordlog.measure.Sample;
import org.chordlog.store.StoreException;

/** What changes the database; any thread. */
public interface Writes {
  CompletableFuture<Reading> append(Reading reading, List<PassedProfile> profiles);

  /** False when they were dropped. */
  boolean append(String station, List<Sample> samples);

  /** Committed when it returns. */
  <T> T call(Sql.Body<T> body);

  /** Refuses everything: the database is open for reading only. */
  final class Refused implements Writes {
    @Override
    public CompletableFuture<Reading> append(Reading reading, List<PassedProfile> profiles) {
      return CompletableFuture.failedFuture(refusal());
    }

    @Override
    public boolean append(String station, List<Sample> samples) {
      throw refusal();
    }

    @Override
    public <T> T call(Sql.Body<T> body) {
      throw refusal();
    }

    private static StoreException refusal() {
      return new StoreException("the store is open for reading only", null);
    }
  }
}
