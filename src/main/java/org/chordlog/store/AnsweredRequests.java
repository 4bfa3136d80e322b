package org.chordlog.store;

import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;

/**
 * Requests that were done, by their keys, so that one that is sent again after a restart is not
 * done again: those of the last 24 hours, and the newest {@value #MOST} of them. That one was done
 * is written with its effect (see {@link RequestKey}), its answer afterwards.
 */
public interface AnsweredRequests {
  int MOST = 20_000;
  long KEPT_MICROS = TimeUnit.HOURS.toMicros(24);

  /** {@code answer}: null where it was not stored, or the program ended before it was. */
  record Done(String request, @Nullable Answer answer) {}

  @SuppressWarnings("ArrayRecordComponent") // never compared
  record Answer(int status, String mediaType, byte[] body) {}

  Optional<Done> find(String key);

  /** The same once all that was to be written before was written or given up. */
  Optional<Done> findAfterWrites(String key);

  /** Stores the answer of a request that was done; nothing where there is no such key. */
  void answer(String key, Answer answer);

  /** The request had no effect after all: it may be done under the same key. */
  void forget(String key);
}
