package org.chordlog.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import org.chordlog.Await;
import org.chordlog.measure.Reading;
import org.junit.jupiter.api.Test;

/** How a store is opened and closed. */
public abstract class OpeningContract extends StoreContract {
  protected OpeningContract(Opener opener) {
    super(opener);
  }

  @Test
  void aReaderBesideTheWriterSeesWhatWasAcknowledgedAndChangesNothing() {
    Reading like = Kept.first(store);
    try (Store reader = openForReading(directory)) {
      Reading kept = store.readings().append(like).join();
      assertEquals(kept, reader.readings().find(kept.id()).orElseThrow());
      assertFalse(reader.health().writable());
      assertThrows(StoreException.class, () -> reader.jobs().add(Some.job("K", "M"), "me"));
      CompletionException e =
          assertThrows(CompletionException.class, () -> reader.readings().append(like).join());
      assertTrue(e.getCause() instanceof StoreException, e::toString);
    }
  }

  @Test
  void aClosedStoreRefusesEverything() {
    Reading like = Kept.first(store);
    store.close();
    assertThrows(StoreException.class, () -> store.jobs().add(Some.job("K", "M"), "me"));
    assertThrows(StoreException.class, () -> store.readings().lastId());
    assertThrows(CompletionException.class, () -> store.readings().append(like).join());
  }

  /** Whoever appends while it closes is told whether the reading is stored, and that is so. */
  @Test
  void everyAppendIsAnsweredWhereTheStoreCloses() throws Exception {
    Reading like = Kept.first(store);
    List<CompletableFuture<Reading>> appended = new ArrayList<>();
    Thread station = new Thread(() -> appendUntilRefused(like, appended));
    station.start();
    Await.until(() -> store.readings().lastSequence(like.station()) > 20);
    store.close();
    station.join();
    for (CompletableFuture<Reading> each : appended) {
      Await.until(each::isDone);
    }
    try (Store reader = openForReading(directory)) {
      assertEquals(
          appended.stream().filter(each -> !each.isCompletedExceptionally()).count(),
          reader.readings().countOfJob(like.jobId()));
    }
  }

  private void appendUntilRefused(Reading like, List<CompletableFuture<Reading>> appended) {
    do {
      appended.add(
          store
              .readings()
              .append(
                  Some.reading(like.station(), 1 + appended.size(), like.jobId(), like.setUpId())));
    } while (!appended.get(appended.size() - 1).isCompletedExceptionally());
  }
}
