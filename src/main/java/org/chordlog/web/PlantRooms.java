package org.chordlog.web;

import java.util.List;
import java.util.function.LongSupplier;
import org.chordlog.chart.ChartRenderer;
import org.chordlog.monitor.Monitor;
import org.chordlog.monitor.RecentlyUsed;
import org.chordlog.store.Plant;
import org.chordlog.store.Store;
import org.chordlog.web.http.Refusal;
import org.chordlog.web.http.Route;
import org.chordlog.web.http.WebSettings;

/**
 * The workshop computers of a plant and what each is served from, made when it is first asked for;
 * the {@value #MOST} used last are held. One whose records began anew gets other rooms. Any thread.
 */
final class PlantRooms implements AutoCloseable {
  static final int MOST = 16;

  /** The statistics of so many are held; those of others come back from their checkpoints. */
  private static final int MOST_MONITORS = 64;

  private static final long FRESH_NANOS = 1_000_000_000L;

  /** What rooms are made for. */
  private record Key(String edgeId, int incarnation) {}

  /** What the plant said, and when. */
  private record Seen(List<Plant.Edge> edges, long atNanos) {}

  private final Plant plant;
  private final WebSettings settings;
  private final ChartRenderer charts;
  private final StoreRoutes.Shared shared;
  private final LongSupplier nanos = System::nanoTime;
  private final RecentlyUsed<Key, EdgeRooms> rooms = new RecentlyUsed<>(MOST, EdgeRooms::close);
  private final RecentlyUsed<Key, Monitor> monitors =
      new RecentlyUsed<>(MOST_MONITORS, Monitor::close);
  private volatile Seen seen = new Seen(List.of(), Long.MIN_VALUE);

  PlantRooms(Plant plant, WebSettings settings, ChartRenderer charts, StoreRoutes.Shared shared) {
    this.plant = plant;
    this.settings = settings;
    this.charts = charts;
    this.shared = shared;
  }

  /** Every row there is for a workshop computer. */
  List<Route> rows(Store any) {
    return EdgeRooms.rows(any, settings, charts, shared);
  }

  /** By site and name; at most a second old. */
  List<Plant.Edge> edges() {
    Seen before = seen;
    if (before.atNanos() == Long.MIN_VALUE || nanos.getAsLong() - before.atNanos() > FRESH_NANOS) {
      before = new Seen(plant.edges(), nanos.getAsLong());
      seen = before;
    }
    return before.edges();
  }

  /** Refused with 404 where there is none of that name. */
  Plant.Edge edge(String name) {
    return edges().stream()
        .filter(each -> each.name().equals(name))
        .findFirst()
        .orElseThrow(() -> Refusal.notFound("workshop computer", name));
  }

  /** Of the workshop computer of that name; refused with 404 where there is none. */
  EdgeRooms of(String name) {
    return of(edge(name));
  }

  /** The running statistics of that workshop computer. */
  Monitor monitor(Plant.Edge edge) {
    return monitors.get(
        new Key(edge.id(), edge.incarnation()), key -> new Monitor(plant.store(key.edgeId())));
  }

  /** Refused with 409 where it has delivered nothing. */
  EdgeRooms of(Plant.Edge edge) {
    if (edge.delivered() == null) {
      throw Refusal.conflict(edge.name() + " has delivered nothing yet.");
    }
    return rooms.get(
        new Key(edge.id(), edge.incarnation()),
        key -> EdgeRooms.open(plant.store(key.edgeId()), monitor(edge), settings, charts, shared));
  }

  /** Pages that listen, over all that is held. */
  int listening() {
    return rooms.values().stream().mapToInt(EdgeRooms::listening).sum();
  }

  void endSession(String session) {
    rooms.values().forEach(each -> each.endSession(session));
  }

  @Override
  public void close() {
    rooms.releaseAll();
    monitors.releaseAll();
  }
}
