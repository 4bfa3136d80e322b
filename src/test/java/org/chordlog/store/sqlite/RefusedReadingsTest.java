package org.chordlog.store.sqlite;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.DecideBy;
import org.chordlog.measure.Face;
import org.chordlog.measure.KnownLengths;
import org.chordlog.measure.LengthSource;
import org.chordlog.measure.PassedProfile;
import org.chordlog.measure.Reading;
import org.chordlog.store.Kept;
import org.chordlog.store.RequestKey;
import org.chordlog.store.Some;
import org.chordlog.store.StoreHealth;
import org.chordlog.store.sql.Sql;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A reading that breaks a rule of the database leaves nothing behind, and its neighbours stay. */
final class RefusedReadingsTest {
  @TempDir Path directory;

  private SqliteStore store;
  private Reading like;

  @BeforeEach
  void open() {
    store = SqliteStore.open(directory, Some.QUICK);
    like = Kept.first(store);
  }

  @AfterEach
  void close() {
    store.close();
  }

  @Test
  void itsProfileIsRefused() {
    CompletableFuture<Reading> before = store.readings().append(reading(1));
    CompletableFuture<Reading> refused =
        store.readings().append(refused(), List.of(profile(1), profile(1)));
    CompletableFuture<Reading> after = store.readings().append(reading(2), List.of(profile(1)));
    assertRefused(refused);
    assertEquals(1, before.join().id());
    assertEquals(2, after.join().id());
    assertEquals(1, store.readings().profiles(2).size());
    assertKept(2);
  }

  @Test
  void theKeyOfItsRequestIsRefused() {
    noMoreKeys();
    RequestKey key = new RequestKey("key", "POST /api/stations/A/reading");
    CompletableFuture<Reading> refused =
        RequestKey.during(key, () -> store.readings().append(refused()));
    assertRefused(refused);
    assertEquals(Optional.empty(), store.answeredRequests().find("key"));
    assertEquals(1, store.readings().append(reading(1)).join().id());
    assertKept(1);
  }

  @Test
  void itsOwnRowIsRefused() {
    Reading ofNoJob = Some.reading("B", 1, like.jobId() + 1, like.setUpId());
    assertRefused(store.readings().append(ofNoJob));
    assertEquals(1, store.readings().append(reading(1)).join().id());
    assertKept(1);
  }

  private Reading reading(int sequence) {
    return Some.reading("A", sequence, like.jobId(), like.setUpId());
  }

  /** Of another station, since the audit names readings that are missing between others. */
  private Reading refused() {
    return Some.reading("B", 1, like.jobId(), like.setUpId());
  }

  private static PassedProfile profile(int pass) {
    return new PassedProfile(
        pass,
        new byte[] {1},
        new PassedProfile.Basis(
            LengthSource.CHANNEL,
            Face.INNER,
            new KnownLengths(6000.0, 1.0, null, 60.0, null),
            DecideBy.BOTH,
            new PassedProfile.Extent(1.25, 5990.0, true, false, 3)));
  }

  private void noMoreKeys() {
    store
        .database()
        .write(
            connection -> {
              Sql.run(
                  connection,
                  "CREATE TEMP TRIGGER no_more_keys BEFORE INSERT ON main.answered_request BEGIN"
                      + " SELECT raise(ABORT, 'no more'); END");
              return true;
            });
  }

  private static void assertRefused(CompletableFuture<Reading> refused) {
    CompletionException e = assertThrows(CompletionException.class, refused::join);
    assertInstanceOf(BadInput.class, e.getCause());
  }

  /** One reading was refused. */
  private void assertKept(int kept) {
    StoreHealth.Counts counts = store.health().counts();
    assertEquals(kept, counts.committedReadings());
    assertEquals(1, counts.droppedReadings());
    assertEquals(kept, store.readings().countOfJob(like.jobId()));
    store.close();
    assertEquals(List.of(), new SqliteFiles(directory).audit());
  }
}
