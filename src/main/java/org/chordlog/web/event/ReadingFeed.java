package org.chordlog.web.event;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import java.util.function.Function;
import org.chordlog.measure.Reading;
import org.chordlog.store.Readings;

/**
 * Committed readings in the order of their ids: the newest {@value #KEPT} in memory, older ones
 * from the store. Announcements of different stations may overtake each other; ids do not.
 */
final class ReadingFeed {
  static final int KEPT = 1_024;
  private static final int PAGE = 256;
  private final Readings readings;
  private final Function<Reading, ?> view;
  private final String epoch;
  private final TreeMap<Long, ServerEvent> newest = new TreeMap<>();
  private long lastId;

  /** {@code view} makes of a reading what is sent of it. */
  public ReadingFeed(Readings readings, Function<Reading, ?> view, String epoch) {
    this.readings = readings;
    this.view = view;
    this.epoch = epoch;
    lastId = readings.lastId();
  }

  synchronized long lastId() {
    return lastId;
  }

  /** The newest id there is, though it may not be taken up yet. */
  long newestId() {
    return Math.max(lastId(), readings.lastId());
  }

  /** Takes up what was committed since the last call; whether there was anything. */
  boolean refresh() {
    long from = lastId();
    List<Reading> fresh = readings.all(from, PAGE);
    synchronized (this) {
      fresh.forEach(this::keep);
    }
    return !fresh.isEmpty();
  }

  private void keep(Reading reading) {
    newest.put(reading.id(), event(reading));
    lastId = Math.max(lastId, reading.id());
    if (newest.size() > KEPT) {
      newest.pollFirstEntry();
    }
  }

  /** Readings after that id, at most a page. */
  List<ServerEvent> after(long id) {
    synchronized (this) {
      if (id >= lastId) {
        return List.of();
      }
      if (!newest.isEmpty() && id >= newest.firstKey() - 1) {
        return first(newest.tailMap(id, false).values());
      }
    }
    return readings.all(id, PAGE).stream().map(this::event).toList();
  }

  private ServerEvent event(Reading reading) {
    return ServerEvent.reading(
        new EventId(reading.id(), epoch), reading.station(), view.apply(reading));
  }

  private static List<ServerEvent> first(Iterable<ServerEvent> events) {
    List<ServerEvent> page = new ArrayList<>();
    for (ServerEvent event : events) {
      if (page.size() == PAGE) {
        break;
      }
      page.add(event);
    }
    return page;
  }
}
