package org.chordlog.station;

import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;
import org.chordlog.measure.BadInput;

/** Asks a station's thread and waits for its answer, two seconds at most. Any other thread. */
record StationRequest(String station, Mailbox mailbox) {
  private static final long PATIENCE_SECONDS = 2;

  <T> T ask(Supplier<T> work) {
    try {
      return mailbox.ask(work).orTimeout(PATIENCE_SECONDS, TimeUnit.SECONDS).join();
    } catch (CompletionException e) {
      if (e.getCause() instanceof BadInput refused) {
        throw refused;
      }
      throw new BadInput("station", station, "does not answer", "try again shortly");
    }
  }

  /** Waits for an answer that takes longer, as the next rest of the plunger does. */
  <T> T await(CompletableFuture<T> answer, long seconds) {
    try {
      return answer.orTimeout(seconds, TimeUnit.SECONDS).join();
    } catch (CompletionException e) {
      throw new BadInput("station", station, "gave no answer in time", "try again shortly");
    }
  }

  void tell(Runnable work) {
    boolean unused =
        ask(
            () -> {
              work.run();
              return true;
            });
  }
}
