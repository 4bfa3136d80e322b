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
 * Requests with a key that are being done, and answers of those that were done since the start: for
 * an hour, and the newest {@value #MOST}. Any thread.
 */
final class SentRequests {
  private static final int MOST = 1_000;
  private static final long KEPT_NANOS = TimeUnit.HOURS.toNanos(1);

  /** What was asked under a key, and what was answered; null while it is being done. */
  private record Sent(String request, @Nullable Answer answer, long atNanos) {}

  private final LongSupplier nanos;
  private final Map<String, Sent> sent = new LinkedHashMap<>();

  SentRequests(LongSupplier nanos) {
    this.nanos = nanos;
  }

  /** The answer given before; null where none is known here: it is being done from now on. */
  synchronized @Nullable Answer begin(RequestKey key) {
    dropOld();
    Sent before = sent.get(key.key());
    if (before == null) {
      sent.put(key.key(), new Sent(key.request(), null, nanos.getAsLong()));
      return null;
    }
    requireSame(before.request(), key);
    if (before.answer() == null) {
      throw new Refusal(
          409, "Not possible now", "The same request is being done.", Map.of("Retry-After", "1"));
    }
    return before.answer();
  }

  static void requireSame(String request, RequestKey key) {
    if (!request.equals(key.request())) {
      throw new Refusal(
          422,
          "Key used already",
          "This " + SentTwice.KEY + " was sent with another request before.");
    }
  }

  private void dropOld() {
    Iterator<Sent> all = sent.values().iterator();
    while (all.hasNext()) {
      Sent oldest = all.next();
      if (sent.size() < MOST && nanos.getAsLong() - oldest.atNanos() < KEPT_NANOS) {
        return;
      }
      all.remove();
    }
  }

  synchronized void end(RequestKey key, Answer answer) {
    sent.put(key.key(), new Sent(key.request(), answer, nanos.getAsLong()));
  }

  synchronized void forget(RequestKey key) {
    sent.remove(key.key());
  }
}
