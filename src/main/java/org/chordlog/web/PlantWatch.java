package org.chordlog.web;

import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import org.chordlog.store.Plant;
import org.chordlog.timer.TimedWork;
import org.chordlog.timer.Tried;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Keeps a summary of each workshop computer for the front page, made anew where something arrived
 * from it; so the page takes no longer for more of them. One thread; any may ask.
 */
final class PlantWatch implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(PlantWatch.class);
  private static final int SECONDS = 3;
  private final Plant plant;
  private final PlantRooms rooms;
  private final Map<String, EdgeSummary> summaries = new ConcurrentHashMap<>();

  /** Of the thread: ids of those whose trouble was told. */
  private final Set<String> notJudged = new HashSet<>();

  private final ScheduledExecutorService timer = TimedWork.timer("plant-watch");

  PlantWatch(Plant plant, PlantRooms rooms) {
    this.plant = plant;
    this.rooms = rooms;
  }

  void start() {
    var unused =
        timer.scheduleWithFixedDelay(
            TimedWork.of(new Tried(LOG, "the plant can't be read; tried again", this::look)),
            0,
            SECONDS,
            TimeUnit.SECONDS);
  }

  /** Empty until it was read for the first time. */
  Optional<EdgeSummary> of(Plant.Edge edge) {
    return Optional.ofNullable(summaries.get(edge.id()));
  }

  private void look() {
    List<Plant.Edge> edges = rooms.edges();
    edges.forEach(this::look);
    summaries.keySet().retainAll(edges.stream().map(Plant.Edge::id).toList());
  }

  /** One whose records can't be judged does not keep the others from the page. */
  private void look(Plant.Edge edge) {
    EdgeSummary before = summaries.get(edge.id());
    if (edge.delivered() == null || (before != null && before.stillOf(edge))) {
      return;
    }
    try {
      summaries.put(edge.id(), EdgeSummary.made(edge, plant.store(edge.id()), rooms.monitor(edge)));
      notJudged.remove(edge.id());
    } catch (RuntimeException e) {
      if (notJudged.add(edge.id())) {
        LOG.atWarn().addKeyValue("edge", edge.name()).setCause(e).log("can't be judged");
      }
    }
  }

  @Override
  public void close() {
    timer.shutdownNow();
  }
}
