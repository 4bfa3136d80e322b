package org.chordlog.store.sqlite;

import java.util.concurrent.CompletableFuture;
import org.chordlog.measure.Reading;

/** One thing for the writer to do, with the future that completes after its commit. */
sealed interface Work {
  CompletableFuture<?> done();

  /** A reading: held and tried again until it can be kept. */
  record Append(Reading reading, CompletableFuture<Reading> done) implements Work {}

  /** Anything else: fails at once when the disk does, so that its caller knows. */
  record Call<T>(Sql.Body<T> body, CompletableFuture<T> done) implements Work {}
}
