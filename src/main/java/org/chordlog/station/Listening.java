package org.chordlog.station;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.function.Consumer;
import java.util.function.Predicate;
import org.chordlog.decode.Arrival;
import org.chordlog.decode.Polling;
import org.chordlog.link.Link;
import org.chordlog.link.LinkException;
import org.chordlog.link.LinkSettings;
import org.jspecify.annotations.Nullable;

/** Listens to a link for a while without knowing what is on it. */
public final class Listening {
  private static final int MOST_BYTES = 1 << 20;
  private static final double MORE_SECONDS = 1;
  private static final long NAP_NANOS = TimeUnit.MILLISECONDS.toNanos(2);
  private final @Nullable Polling polling;
  private final Consumer<Arrival> live;
  private final byte[] buffer = new byte[4096];
  private @Nullable Long asked;

  /**
   * {@code polling} is sent at its interval where given; {@code live} sees the bytes as they come.
   */
  public Listening(@Nullable Polling polling, Consumer<Arrival> live) {
    this.polling = polling;
    this.live = live;
  }

  /** Opens the link, and answers all that came within that time, at most a mebibyte. */
  public List<Arrival> listen(LinkSettings settings, double seconds) throws LinkException {
    return listen(settings, seconds, seconds, all -> true);
  }

  /**
   * As {@link #listen(LinkSettings, double)}, and where that was not enough until it is, at the
   * longest for so many seconds.
   */
  List<Arrival> listen(
      LinkSettings settings, double seconds, double most, Predicate<List<Arrival>> enough)
      throws LinkException {
    try (Link link = settings.open()) {
      List<Arrival> all = new ArrayList<>();
      double listened = 0;
      while (listened < seconds || (listened < most && !enough.test(all))) {
        double next = listened == 0 ? seconds : MORE_SECONDS;
        listen(link, (long) (next * 1e9), all);
        listened += next;
      }
      return all;
    }
  }

  private void listen(Link link, long duration, List<Arrival> all) throws LinkException {
    long start = System.nanoTime();
    int bytes = all.stream().mapToInt(a -> a.bytes().length).sum();
    for (long now = start; now - start < duration && bytes < MOST_BYTES; now = System.nanoTime()) {
      ask(link, now);
      int count = polling == null ? link.read(buffer) : readSoon(link);
      if (count > 0) {
        Arrival arrival = new Arrival(System.nanoTime(), Arrays.copyOf(buffer, count));
        all.add(arrival);
        live.accept(arrival);
        bytes += count;
      }
    }
  }

  private void ask(Link link, long now) throws LinkException {
    if (polling != null
        && (asked == null || now - asked >= TimeUnit.MILLISECONDS.toNanos(polling.intervalMs()))) {
      link.write(polling.requestBytes());
      asked = now;
    }
  }

  private int readSoon(Link link) throws LinkException {
    int count = link.readAvailable(buffer);
    if (count == 0) {
      LockSupport.parkNanos(NAP_NANOS);
    }
    return count;
  }
}
