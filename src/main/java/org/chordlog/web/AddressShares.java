package org.chordlog.web;

import java.util.ArrayDeque;
import java.util.HashMap;
import java.util.Map;
import java.util.Queue;
import java.util.concurrent.Executor;
import java.util.concurrent.RejectedExecutionException;
import org.jspecify.annotations.Nullable;

/**
 * Runs what addresses ask for; of one address only so much at once, and the rest waits without a
 * thread. This computer itself may take all threads: a proxy before the service speaks for many.
 * Any thread.
 */
final class AddressShares {
  private static final int OF_ONE = 8;

  /** What one address has running, and what waits in the order it came. */
  private static final class Share {
    private int running;
    private final Queue<Runnable> waiting = new ArrayDeque<>();
  }

  private final Executor threads;
  private final int all;
  private final Map<String, Share> shares = new HashMap<>();

  /** {@code all}: how many threads there are. */
  AddressShares(Executor threads, int all) {
    this.threads = threads;
    this.all = all;
  }

  /** Now, or when the address has less running. {@code work} throws nothing. */
  void execute(String address, Runnable work) {
    synchronized (shares) {
      shares.computeIfAbsent(address, each -> new Share()).waiting.add(work);
    }
    begin(address);
  }

  private void begin(String address) {
    Runnable work = next(address);
    if (work == null) {
      return;
    }
    try {
      threads.execute(() -> run(address, work));
    } catch (RejectedExecutionException e) {
      end(address); // the service stops
    }
  }

  private void run(String address, Runnable work) {
    try {
      work.run();
    } finally {
      end(address);
      begin(address);
    }
  }

  private @Nullable Runnable next(String address) {
    synchronized (shares) {
      Share share = shares.get(address);
      int most = AddressLimit.isThisComputer(address) ? all : OF_ONE;
      if (share == null || share.running >= most) {
        return null;
      }
      Runnable work = share.waiting.poll();
      if (work != null) {
        share.running++;
      }
      return work;
    }
  }

  private void end(String address) {
    synchronized (shares) {
      Share share = shares.get(address);
      if (share != null && --share.running == 0 && share.waiting.isEmpty()) {
        shares.remove(address);
      }
    }
  }
}
