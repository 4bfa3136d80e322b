package org.chordlog.web;

import com.fasterxml.jackson.databind.JsonNode;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.chordlog.Await;
import org.chordlog.chart.ChartRenderer;
import org.chordlog.forward.Forwarder;
import org.chordlog.forward.PlantSettings;
import org.chordlog.harness.PostgresServer;
import org.chordlog.store.Plant;
import org.chordlog.store.PlantAddress;
import org.chordlog.store.PlantAdmin;
import org.chordlog.store.Store;
import org.chordlog.store.StoreException;
import org.chordlog.store.open.Stores;
import org.chordlog.web.http.Json;
import org.chordlog.web.http.WebSettings;

/** A plant in a real database, stores on this disk that deliver to it, and its pages. */
final class PlantRig implements AutoCloseable {
  private static final String PASSWORD = "of an invented plant";
  private static final int TRIES = 10;
  private final PostgresServer server = PostgresServer.shared();
  private final String database = server.database();
  private final PlantAdmin admin = Stores.plantAdmin(address(PostgresServer.SUPERUSER));
  private final Map<String, Store> stores = new LinkedHashMap<>();
  private final Map<String, Forwarder> forwarders = new LinkedHashMap<>();
  private final List<Store> opened = new ArrayList<>();
  final ChartRenderer charts = ChartRenderer.idle();
  final Plant plant;
  final PlantWeb web;

  PlantRig() {
    int unused = admin.create();
    server.execute(database, "DROP ROLE IF EXISTS chordlog_plant_pages");
    plant = opened(address(admin.addReader("pages", PASSWORD)));
    web = new PlantWeb(WebSettings.onLoopback(0), plant, charts, Clock.systemUTC());
    web.start();
  }

  /** The pages wait 3 s for a connection, which a busy computer of many tests may not keep. */
  private static Plant opened(PlantAddress address) {
    for (int i = 1; i < TRIES; i++) {
      try {
        return Stores.openPlant(address);
      } catch (StoreException e) {
        System.err.println(e.getMessage() + ": tried again");
      }
    }
    return Stores.openPlant(address);
  }

  private PlantAddress address(String user) {
    String url = "postgresql://127.0.0.1:" + server.port() + "/" + database;
    return PlantAddress.of(url, user, () -> PASSWORD, null);
  }

  /** A workshop computer that delivers what is in that store, which whoever opened it closes. */
  PlantRig with(String site, String name, Store store) {
    PlantSettings settings = new PlantSettings(name, site, address(added(site, name)), 0);
    stores.put(name, store);
    forwarders.put(name, Forwarder.of(settings, store).start());
    return this;
  }

  /** One of an invented shop in a directory of its own. */
  PlantRig with(String site, String name, Path directory) {
    Store store = Stores.open(ShopPages.filled(directory));
    opened.add(store);
    return with(site, name, store);
  }

  /** One that was added and delivers nothing. */
  PlantRig without(String site, String name) {
    String unused = added(site, name);
    return this;
  }

  /** The roles are those of the whole server, so the ones of an earlier test give way. */
  private String added(String site, String name) {
    server.execute(
        database, "DROP ROLE IF EXISTS chordlog_edge_" + name.replaceAll("[^a-z0-9]", "_"));
    return admin.addEdge(name, site, PASSWORD);
  }

  /** Waits until everything is there, and the pages, which look once a second, have seen it. */
  PlantRig complete() throws Exception {
    Await.until(() -> stores.keySet().stream().allMatch(this::complete), plant::edges);
    Await.until(() -> shown(view()), this::view);
    return this;
  }

  private String view() throws Exception {
    URI page = URI.create("http://127.0.0.1:" + web.port() + "/api/plant");
    return HttpClient.newHttpClient()
        .send(HttpRequest.newBuilder(page).build(), BodyHandlers.ofString())
        .body();
  }

  private boolean shown(String view) throws Exception {
    JsonNode edges = Json.shared().readTree(view).path("edges");
    int complete = 0;
    for (JsonNode edge : edges) {
      complete += edge.path("delivery").asText().equals("COMPLETE") ? 1 : 0;
    }
    return edges.size() == plant.edges().size() && complete >= stores.size();
  }

  private boolean complete(String name) {
    return plant.edges().stream()
        .filter(each -> each.name().equals(name))
        .anyMatch(
            edge ->
                edge.state() == Plant.State.COMPLETE
                    && edge.delivered() != null
                    && edge.delivered().lastReadingId() == store(name).readings().lastId());
  }

  Store store(String name) {
    return Objects.requireNonNull(stores.get(name));
  }

  /** From now on that one does not speak: what is asked of it waits. */
  PlantRig cutOff(String name) {
    Objects.requireNonNull(forwarders.remove(name)).close();
    return this;
  }

  /** Cut off, and last heard so long ago. */
  PlantRig silent(String name, long seconds) {
    PlantRig unused = cutOff(name);
    server.execute(
        database,
        "UPDATE plant.edge SET seen_micros = seen_micros - %1$d WHERE name = '%2$s'; UPDATE plant.batch SET received_micros = received_micros - %1$d WHERE edge_id = (SELECT edge_id FROM plant.edge WHERE name = '%2$s')"
            .formatted(seconds * 1_000_000, name));
    return this;
  }

  /** As it says itself; it must be cut off, or it soon says otherwise. */
  PlantRig clockAhead(String name, long seconds) {
    return says(name, "clock_ahead_micros = " + seconds * 1_000_000);
  }

  PlantRig waiting(String name, long records) {
    return says(name, "backlog_rows = " + records);
  }

  private PlantRig says(String name, String what) {
    server.execute(database, "UPDATE plant.edge SET " + what + " WHERE name = '" + name + "'");
    return this;
  }

  String id(String name) {
    return plant.edges().stream()
        .filter(each -> each.name().equals(name))
        .findFirst()
        .orElseThrow()
        .id();
  }

  List<Plant.Request> requests(String name) {
    return plant.requests(id(name), Long.MAX_VALUE, 50);
  }

  /** As the workshop computer does; {@code refusal} is empty where it did as asked. */
  void answer(long request, String refusal) {
    server.execute(
        database,
        "UPDATE plant.request SET answered_micros = plant.now_micros(), answer = '%s' WHERE id = %d"
            .formatted(refusal, request));
  }

  @Override
  public void close() {
    web.close();
    charts.close();
    plant.close();
    forwarders.values().forEach(Forwarder::close);
    opened.forEach(Store::close);
  }
}
