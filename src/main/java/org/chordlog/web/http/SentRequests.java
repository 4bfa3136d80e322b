package org.chordlog.web.http;

import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.function.LongSupplier;
import org.chordlog.store.AnsweredRequests.Answer;
import org.chordlog.store.RequestKey;
import org.jspecify.annotations.Nullable;

/**
 * Requests with a key that are being done, and what is known of those since the start: for an hour,
 * and the newest {@value #MOST}. Any thread.
 */
final class SentRequests {
  private static final int MOST = 1_000;
  private static final long KEPT_NANOS = TimeUnit.HOURS.toNanos(1);

  /** How far a request is; in doubt where it failed and may yet have its effect. */
  private enum State {
    UNDER_WAY,
    DONE,
    IN_DOUBT
  }

  /** What was asked under a key, and what was answered; null unless it is kept. */
  private record Sent(String request, State state, @Nullable Answer answer, long atNanos) {}

  /** What is known of a request that is to be done, unless it has an answer. */
  record Before(@Nullable Answer answer, boolean inDoubt) {}

  private final LongSupplier nanos;
  private final Map<String, Sent> sent = new LinkedHashMap<>();

  SentRequests(LongSupplier nanos) {
    this.nanos = nanos;
  }

  /** The answer given before; where none is known here, it is being done from now on. */
  synchronized Before begin(RequestKey key) {
    dropOld();
    Sent before = sent.get(key.key());
    if (before != null) {
      requireSame(before.request(), key);
      if (before.state() == State.UNDER_WAY) {
        throw underWay();
      }
      if (before.state() == State.DONE) {
        return new Before(known(before.answer()), false);
      }
    }
    put(key, State.UNDER_WAY, null);
    return new Before(null, before != null);
  }

  static void requireSame(String request, RequestKey key) {
    if (!request.equals(key.request())) {
      throw new Refusal(
          422,
          "Key used already",
          "This " + SentTwice.KEY + " was sent with another request before.");
    }
  }

  private static Refusal underWay() {
    return new Refusal(
        409,
        "Not possible now",
        "This is still being saved. Look again in a moment before you go on.",
        Map.of("Retry-After", "1"));
  }

  /** The answer of a request that was done. */
  static Answer known(@Nullable Answer answer) {
    if (answer == null) {
      throw new Refusal(
          409,
          "Done already",
          "This was done when it was sent before, but the answer is not known any more. Look at what"
              + " there is now before you go on.");
    }
    return answer;
  }

  private void dropOld() {
    Iterator<Sent> all = sent.values().iterator();
    while (all.hasNext()) {
      Sent oldest = all.next();
      if (sent.size() < MOST && nanos.getAsLong() - oldest.atNanos() < KEPT_NANOS) {
        return;
      }
      if (oldest.state() != State.UNDER_WAY) {
        all.remove();
      }
    }
  }

  /** It was done; null for an answer that is not kept. */
  synchronized void end(RequestKey key, @Nullable Answer answer) {
    put(key, State.DONE, answer);
  }

  /** It failed, and may yet be done by what it left under way. */
  synchronized void doubt(RequestKey key) {
    put(key, State.IN_DOUBT, null);
  }

  private void put(RequestKey key, State state, @Nullable Answer answer) {
    sent.put(key.key(), new Sent(key.request(), state, answer, nanos.getAsLong()));
  }

  synchronized void forget(RequestKey key) {
    sent.remove(key.key());
  }
}
