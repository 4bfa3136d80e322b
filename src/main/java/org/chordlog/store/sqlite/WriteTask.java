package org.chordlog.store.sqlite;

import java.util.List;
import java.util.concurrent.CompletableFuture;
import org.chordlog.measure.PassedProfile;
import org.chordlog.measure.Reading;
import org.chordlog.store.PieceMove;
import org.chordlog.store.RequestKey;
import org.chordlog.store.sql.Sql;
import org.jspecify.annotations.Nullable;

/** One task of the writer; the future completes after its commit. */
sealed interface WriteTask {
  CompletableFuture<?> done();

  /**
   * A reading, with the key of the request that asked for it, if any: held and retried until it is
   * committed.
   */
  @SuppressWarnings("ArrayRecordComponent") // never compared
  record Append(
      Reading reading,
      List<PassedProfile> profiles,
      byte[] rowHash,
      @Nullable RequestKey key,
      CompletableFuture<Reading> done)
      implements WriteTask {
    /** Whether nothing is stored beside the reading's own row. */
    boolean isOneRow() {
      return profiles.isEmpty() && key == null;
    }
  }

  /** Readings that go to another job: held and retried as a reading is, all of it or nothing. */
  record Move(
      PieceMove move,
      List<byte[]> rowHashes,
      @Nullable RequestKey key,
      CompletableFuture<List<Reading>> done)
      implements WriteTask {}

  /** Anything else: fails as soon as a commit fails, so that the waiting caller learns of it. */
  record Call<T>(Sql.Body<T> body, CompletableFuture<T> done) implements WriteTask {}
}
