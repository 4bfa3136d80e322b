package org.chordlog.station;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.NoAnswer;
import org.chordlog.store.StoreException;
import org.junit.jupiter.api.Test;

/** A station whose thread hangs, in opening its port for example: nobody does its work here. */
final class HangingStationTest {
  private final Mailbox mailbox = new Mailbox("A");
  private final StationRequest asking = new StationRequest("A", mailbox);
  private final List<String> done = new ArrayList<>();

  @Test
  void whatWasRefusedIsNotDoneLater() {
    BadInput refused = assertThrows(BadInput.class, () -> asking.ask(() -> done.add("moved")));
    assertEquals("does not answer", refused.faults().get(0).problem().toString());
    mailbox.doWhatWaits();
    assertEquals(List.of(), done);
  }

  @Test
  void whatWasStoredIsNotRefusedAndTheStationHearsOfItWhenItGoesOn() {
    asking.news(() -> done.add("refreshed"));
    assertEquals(List.of(), done);
    mailbox.doWhatWaits();
    assertEquals(List.of("refreshed"), done);
  }

  /** A reading may still come of it, so it is not refused. */
  @Test
  void whatIsNotAnsweredInTimeMayStillBeDone() {
    NoAnswer late = assertThrows(NoAnswer.class, () -> asking.await(new CompletableFuture<>(), 0));
    assertEquals(
        "station A gave no answer in time: look whether it is done before you try again",
        late.getMessage());
    CompletableFuture<String> full =
        CompletableFuture.failedFuture(new StoreException("full", null));
    assertThrows(StoreException.class, () -> asking.await(full, 1));
  }

  @Test
  void newsForAFullBoxIsNoRefusalEither() {
    for (int i = 0; i < 100; i++) {
      mailbox.wake();
    }
    asking.news(() -> done.add("refreshed"));
    assertThrows(BadInput.class, () -> asking.tell(() -> done.add("moved")));
    mailbox.doWhatWaits();
    assertEquals(List.of(), done);
  }
}
