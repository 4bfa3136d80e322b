package org.chordlog.station;

import java.util.concurrent.CompletionException;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;
import org.chordlog.measure.BadInput;

/** Asks a station's thread and waits for its answer, two seconds at most. */
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

  void tell(Runnable work) {
    boolean unused =
        ask(
            () -> {
              work.run();
              return true;
            });
  }
}
