package org.chordlog.station;

import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.Supplier;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.NoAnswer;
import org.chordlog.store.RequestKey;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Asks a station's thread and waits for its answer for some seconds at most. Any other thread. */
record StationRequest(String station, Mailbox mailbox) {
  private static final Logger LOG = LoggerFactory.getLogger(StationRequest.class);
  private static final long PATIENCE_SECONDS = 2;

  /** Less than a person notices; a station that opens its port may take longer. */
  private static final long NEWS_MILLIS = 600;

  /**
   * {@link BadInput} when it was refused or not begun in time; then it is never done. What it
   * writes carries the key of the request that the caller works on.
   */
  <T> T ask(Supplier<T> work) {
    RequestKey key = RequestKey.current();
    Mailbox.Asked<T> asked = mailbox.ask(() -> RequestKey.during(key, work::get));
    try {
      return within(asked);
    } catch (TimeoutException e) {
      throw silent();
    } catch (ExecutionException e) {
      if (e.getCause() instanceof BadInput refused) {
        throw refused;
      }
      throw silent();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw silent();
    }
  }

  /** What was begun is waited for once more, since it has its effect. */
  private static <T> T within(Mailbox.Asked<T> asked)
      throws TimeoutException, ExecutionException, InterruptedException {
    try {
      return asked.answer().get(PATIENCE_SECONDS, TimeUnit.SECONDS);
    } catch (TimeoutException e) {
      if (asked.takenBack()) {
        throw e;
      }
      return asked.answer().get(PATIENCE_SECONDS, TimeUnit.SECONDS);
    }
  }

  private BadInput silent() {
    return new BadInput("station", station, "does not answer", "try again shortly");
  }

  /**
   * Waits for an answer that takes longer, as the next rest of the plunger does; {@link NoAnswer}
   * where it may come yet.
   */
  <T> T await(CompletableFuture<T> answer, long seconds) {
    try {
      return answer.orTimeout(seconds, TimeUnit.SECONDS).join();
    } catch (CompletionException e) {
      throw e.getCause() instanceof RuntimeException failure ? failure : noAnswer();
    }
  }

  private NoAnswer noAnswer() {
    return new NoAnswer(
        "station "
            + station
            + " gave no answer in time: look whether it is done before you try again");
  }

  void tell(Runnable work) {
    boolean unused =
        ask(
            () -> {
              work.run();
              return true;
            });
  }

  /**
   * Lets the station know what was stored already. It never refuses: a station that hangs, in
   * opening its port for example, does it when it goes on.
   */
  void news(Runnable work) {
    Mailbox.Asked<Boolean> told =
        mailbox.ask(
            () -> {
              work.run();
              return true;
            });
    try {
      boolean unused = told.answer().get(NEWS_MILLIS, TimeUnit.MILLISECONDS);
    } catch (TimeoutException | ExecutionException e) {
      LOG.atInfo().addKeyValue("station", station).log("the station hears of a change later");
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
