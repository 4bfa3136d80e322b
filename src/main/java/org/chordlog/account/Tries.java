package org.chordlog.account;

import java.util.concurrent.TimeUnit;
import java.util.function.LongSupplier;
import java.util.function.Supplier;

/**
 * Makes an account and an address wait after wrong secrets: after five in a row one second, then
 * twice as long each time, up to 15 minutes. Never for ever: a lock-out of the only person who may
 * close a job stops a line. Any thread.
 */
final class Tries {
  private static final WrongInARow.Bounds BOUNDS =
      new WrongInARow.Bounds(5, TimeUnit.MINUTES.toSeconds(15), 2_000);

  private final WrongInARow wrong;

  Tries(LongSupplier nanos) {
    wrong = new WrongInARow(BOUNDS, "a password, PIN, badge or code was wrong", nanos);
  }

  /** What the proof gives; it throws {@link WrongSecret}, which counts against both. */
  <T> T of(String account, String address, Supplier<T> proof) {
    String ofAccount = "account " + account;
    String ofAddress = "address " + address;
    refuseWaiting("account", ofAccount);
    refuseWaiting("address", ofAddress);
    try {
      T proved = proof.get();
      wrong.right(ofAccount);
      wrong.right(ofAddress);
      return proved;
    } catch (WrongSecret e) {
      wrong.wrong(ofAccount);
      wrong.wrong(ofAddress);
      throw e;
    }
  }

  private void refuseWaiting(String what, String key) {
    long seconds = wrong.wait(key);
    if (seconds > 0) {
      throw new TryLater(
          seconds, "Too many wrong tries for this " + what + ". Try again in " + seconds + " s.");
    }
  }
}
