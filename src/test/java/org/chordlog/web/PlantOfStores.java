package org.chordlog.web;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;
import org.chordlog.measure.Recorded;
import org.chordlog.store.Plant;
import org.chordlog.store.Store;

/**
 * A plant whose stores are real and on this disk, each open here, for tests of what is made of
 * them: pages and API see nothing of the database that a plant has.
 */
final class PlantOfStores implements Plant {
  private final Store own;
  private final Map<String, Store> stores = new LinkedHashMap<>();
  private final List<Edge> edges = new CopyOnWriteArrayList<>();
  private final List<Request> requests = new CopyOnWriteArrayList<>();

  PlantOfStores(Store own) {
    this.own = own;
  }

  /** A workshop computer that has delivered all that is in that store. */
  PlantOfStores with(String site, String name, Store store) {
    return with(site, name, store, State.COMPLETE, 0);
  }

  /** One that spoke so many seconds ago. */
  PlantOfStores with(String site, String name, Store store, State state, long secondsAgo) {
    long now = System.currentTimeMillis() * 1_000;
    long seen = now - secondsAgo * 1_000_000;
    Delivered delivered = new Delivered(store.readings().lastId(), seen, seen, 0, seen, 0);
    stores.put(name, store);
    edges.add(
        new Edge(name, name, site, 1, new Versions("1.0", 8), state, "", delivered, List.of()));
    return this;
  }

  /** One that was added and has delivered nothing. */
  PlantOfStores without(String site, String name) {
    edges.add(new Edge(name, name, site, 1, new Versions("", 0), State.NEW, "", null, List.of()));
    return this;
  }

  @Override
  public List<Edge> edges() {
    return new ArrayList<>(edges);
  }

  @Override
  public Optional<Edge> edge(String id) {
    return edges.stream().filter(each -> each.id().equals(id)).findFirst();
  }

  @Override
  public Store store(String edgeId) {
    Store found = stores.get(edgeId);
    if (found == null) {
      throw new IllegalStateException("nothing delivered by " + edgeId);
    }
    return found;
  }

  @Override
  public Store own() {
    return own;
  }

  @Override
  public synchronized Request ask(String edgeId, RequestKind kind, String body, Recorded by) {
    Request made = new Request(requests.size() + 1, edgeId, kind, body, by, null);
    requests.add(made);
    return made;
  }

  /** As the workshop computer answers; {@code refusal} is empty where it did as asked. */
  synchronized void answer(long id, String refusal) {
    Request asked = requests.get((int) id - 1);
    Answer answer = new Answer(asked.made().atMicros() + 1, refusal);
    requests.set(
        (int) id - 1,
        new Request(id, asked.edgeId(), asked.kind(), asked.body(), asked.made(), answer));
  }

  @Override
  public List<Request> requests(String edgeId, long beforeId, int limit) {
    List<Request> found = new ArrayList<>();
    for (int i = requests.size() - 1; i >= 0 && found.size() < limit; i--) {
      Request each = requests.get(i);
      if (each.edgeId().equals(edgeId) && each.id() < beforeId) {
        found.add(each);
      }
    }
    return found;
  }

  /** Whoever opened the stores closes them. */
  @Override
  public void close() {}
}
