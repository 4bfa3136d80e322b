package org.chordlog.store;

import org.jspecify.annotations.Nullable;

/**
 * The idempotency key of a request that changes something. While a thread works on the request,
 * whatever it writes to a store carries the key in the same commit: so it is known after a kill,
 * too, that the request was done.
 */
public final class RequestKey {
  private static final ThreadLocal<@Nullable RequestKey> CURRENT = new ThreadLocal<>();

  private final String key;
  private final String request;
  private volatile boolean written;

  /** {@code request}: what was asked under the key, as one short text. */
  public RequestKey(String key, String request) {
    this.key = key;
    this.request = request;
  }

  /** Something to be done for a request. */
  public interface Work<T, E extends Exception> {
    T run() throws E;
  }

  /** Of the request that this thread works on; null where it works on none that has a key. */
  public static @Nullable RequestKey current() {
    return CURRENT.get();
  }

  /** Does that on this thread for the request with that key; null for none. */
  public static <T, E extends Exception> T during(@Nullable RequestKey key, Work<T, E> work)
      throws E {
    RequestKey before = CURRENT.get();
    CURRENT.set(key);
    try {
      return work.run();
    } finally {
      CURRENT.set(before);
    }
  }

  public String key() {
    return key;
  }

  public String request() {
    return request;
  }

  /** To be called by the store, in the transaction that writes the key. */
  public void wrote() {
    written = true;
  }

  /** Whether something was written that carries it. */
  public boolean written() {
    return written;
  }
}
