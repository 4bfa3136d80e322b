package org.chordlog.web;

import java.util.HashMap;
import java.util.HashSet;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.NoSuchElementException;
import java.util.Set;
import org.chordlog.measure.Exclusion;
import org.chordlog.measure.Reading;
import org.chordlog.measure.SetUp;
import org.chordlog.report.qif.QifReading;
import org.chordlog.report.qif.QifReadings;
import org.chordlog.store.Store;

/**
 * The readings of a job up to a last one, a page at a time, each judged by the limits in force;
 * exclusions are those at the start, so that going through them twice gives the same.
 */
final class StoredQifReadings implements QifReadings {
  private static final int PAGE = 1_000;

  private final Store store;
  private final long jobId;
  private final long lastReadingId;
  private final Map<Long, String> excluded = new HashMap<>();
  private final Set<Long> moved = new HashSet<>();
  private final Map<Long, SetUp> setUps = new HashMap<>();
  private final ReadingViews views;

  StoredQifReadings(Store store, long jobId, long lastReadingId) {
    this.store = store;
    this.jobId = jobId;
    this.lastReadingId = lastReadingId;
    views = new ReadingViews(store);
    for (Exclusion each : store.readings().exclusionsOfJob(jobId)) {
      excluded.put(each.readingId(), each.excluded() ? each.reason() : "");
    }
    excluded.forEach(this::noteMoved);
  }

  /** What was moved is of a piece of another job, whose document has it. */
  private void noteMoved(long id, String reason) {
    if (Exclusion.moved(reason)) {
      moved.add(id);
    }
  }

  @Override
  public Iterator<QifReading> all() {
    return new Pages();
  }

  @Override
  public SetUp setUp(long id) {
    return setUps.computeIfAbsent(id, each -> store.readings().setUp(each).orElseThrow());
  }

  private QifReading of(Reading reading) {
    return new QifReading(
        views.lotPutRight(reading),
        views.decisionNow(reading),
        excluded.getOrDefault(reading.id(), ""));
  }

  /** By key, so that no cursor stays open while the reader is slow. */
  private final class Pages implements Iterator<QifReading> {
    private List<Reading> page = List.of();
    private int at;
    private long after;
    private boolean last;

    @Override
    public boolean hasNext() {
      while (at == page.size() && !last) {
        List<Reading> all = store.readings().ofJob(jobId, after, PAGE);
        last = all.size() < PAGE;
        after = all.isEmpty() ? after : all.get(all.size() - 1).id();
        page = all.stream().filter(each -> !moved.contains(each.id())).toList();
        at = 0;
      }
      return at < page.size() && page.get(at).id() <= lastReadingId;
    }

    @Override
    public QifReading next() {
      if (!hasNext()) {
        throw new NoSuchElementException();
      }
      return of(page.get(at++));
    }
  }
}
