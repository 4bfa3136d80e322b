package org.chordlog.station;

import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.Consumer;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Hands announcements to whoever subscribed, on the thread that announces; one that fails does not
 * keep the others from them. Any thread.
 */
final class Announcer {
  private static final Logger LOG = LoggerFactory.getLogger(Announcer.class);

  private final List<Consumer<Announcement>> listeners = new CopyOnWriteArrayList<>();

  void subscribe(Consumer<Announcement> listener) {
    listeners.add(listener);
  }

  void unsubscribe(Consumer<Announcement> listener) {
    listeners.remove(listener);
  }

  void announce(Announcement announcement) {
    for (Consumer<Announcement> listener : listeners) {
      try {
        listener.accept(announcement);
      } catch (RuntimeException e) {
        LOG.error("A listener failed at {}", announcement, e);
      }
    }
  }
}
