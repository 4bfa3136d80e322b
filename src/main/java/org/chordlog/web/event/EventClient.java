package org.chordlog.web.event;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/**
 * One listener to the events, with its own bounded queue and its own sender thread, so that one
 * that never reads holds up nobody. Of live values only the newest waits; readings are taken from
 * the feed by their id and so are never lost; of notices the oldest is dropped beyond {@value
 * #NOTICES}.
 */
final class EventClient {
  static final int NOTICES = 64;

  /** So that what many stations say at nearly one time goes out in one piece. */
  private static final long GATHER_NANOS = 5_000_000;

  private final OutputStream out;
  private final String address;
  private final String session;
  private final Wanted wanted;
  private final PendingEvents newest;
  private final Deque<ServerEvent> notices = new ArrayDeque<>();
  private long cursor;
  private boolean readingsDue = true;
  private boolean closed;
  private long droppedNotices;
  private long gatheredNanos = System.nanoTime() - GATHER_NANOS;

  /** Readings are sent from {@code cursor} on. */
  EventClient(OutputStream out, String address, String session, Wanted wanted, long cursor) {
    this.out = out;
    this.address = address;
    this.session = session;
    this.wanted = wanted;
    this.newest = new PendingEvents(wanted.liveMillis() * 1_000_000L);
    this.cursor = cursor;
  }

  /** That it belongs to; empty for none. */
  String session() {
    return session;
  }

  String address() {
    return address;
  }

  /** Keeps only the newest event of its kind and station. */
  synchronized void replace(ServerEvent event) {
    if (wants(event)) {
      newest.offer(event, System.nanoTime());
      notifyAll();
    }
  }

  synchronized void notice(ServerEvent event) {
    if (wants(event)) {
      if (notices.size() == NOTICES) {
        notices.removeFirst();
        droppedNotices++;
      }
      notices.addLast(event);
      notifyAll();
    }
  }

  synchronized void readingsDue() {
    readingsDue = true;
    notifyAll();
  }

  synchronized void close() {
    closed = true;
    notifyAll();
  }

  synchronized long droppedNotices() {
    return droppedNotices;
  }

  /** Sends until closed or until the other side is gone; runs on a thread of its own. */
  void sendAll(
      ReadingFeed feed, ServerEvent hello, Supplier<ServerEvent> heartbeat, long heartbeatMillis)
      throws IOException, InterruptedException {
    write("retry: 2000\n" + hello.text(wanted.lengths()));
    while (true) {
      @Nullable List<ServerEvent> due = await(feed, heartbeatMillis);
      if (due == null) {
        return;
      }
      write(text(due.isEmpty() ? List.of(heartbeat.get()) : due));
    }
  }

  /** What to send now; empty when a heartbeat is due, null when closed. */
  private @Nullable List<ServerEvent> await(ReadingFeed feed, long heartbeatMillis)
      throws InterruptedException {
    long deadline = System.nanoTime() + heartbeatMillis * 1_000_000L;
    while (true) {
      List<ServerEvent> due = new ArrayList<>();
      if (takeReadingsDue()) {
        due.addAll(readings(feed));
      }
      synchronized (this) {
        if (closed) {
          return null;
        }
        takeQueued(due);
        long left = deadline - System.nanoTime();
        if (!due.isEmpty() || left <= 0) {
          return due;
        }
        if (!readingsDue) {
          TimeUnit.NANOSECONDS.timedWait(this, newest.isEmpty() ? left : Math.min(left, liveIn()));
        }
      }
    }
  }

  private void takeQueued(List<ServerEvent> due) {
    due.addAll(notices);
    notices.clear();
    long now = System.nanoTime();
    if (readingsDue || now - gatheredNanos < GATHER_NANOS) {
      return; // what is told of readings follows them
    }
    if (newest.take(due, now)) {
      gatheredNanos = now;
    }
  }

  private long liveIn() {
    long now = System.nanoTime();
    long due = newest.firstDueNanos(now);
    return Math.max(1, Math.max(due, gatheredNanos + GATHER_NANOS) - now);
  }

  private synchronized boolean takeReadingsDue() {
    boolean due = readingsDue;
    readingsDue = false;
    return due;
  }

  private List<ServerEvent> readings(ReadingFeed feed) {
    List<ServerEvent> page = feed.after(cursor);
    if (!page.isEmpty()) {
      cursor = page.get(page.size() - 1).id();
      readingsDue();
    }
    return page.stream().filter(this::wants).toList();
  }

  private boolean wants(ServerEvent event) {
    return wanted.has(event.station());
  }

  private String text(List<ServerEvent> events) {
    StringBuilder text = new StringBuilder();
    events.forEach(event -> text.append(event.text(wanted.lengths())));
    return text.toString();
  }

  private void write(String text) throws IOException {
    out.write(text.getBytes(StandardCharsets.UTF_8));
    out.flush();
  }
}
