package org.chordlog.forward;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.chordlog.harness.PostgresServer;
import org.chordlog.measure.Job;
import org.chordlog.measure.Reading;
import org.chordlog.store.JobQuery;
import org.chordlog.store.Plant;
import org.chordlog.store.PlantAddress;
import org.chordlog.store.Some;
import org.chordlog.store.open.Stores;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the help says of backup and of dropping what is old, with PostgreSQL's own programs. */
@Tag("slow")
final class PlantBackupTest {
  private static final String SECRET = "of an invented plant";
  @TempDir Path directory;
  private PostgresServer server;
  private String database;
  private String reader;

  @BeforeEach
  void deliveredPlant() throws Exception {
    server = PostgresServer.fresh();
    database = TestPlant.create(server);
    PlantAddress owner =
        PlantAddress.of(server.url(database), PostgresServer.SUPERUSER, () -> "", null);
    reader = Stores.plantAdmin(owner).addReader("pages", SECRET);
    delivers(server, database, 500);
  }

  @AfterEach
  void close() {
    server.close();
  }

  /** So many more readings, which arrive there, as everything else is there. */
  private void delivers(PostgresServer to, String at, int readings) throws Exception {
    try (EdgeRig edge = new EdgeRig(directory, TestPlant.EDGE, to.port(), to, at)) {
      edge.measure(readings);
      edge.start();
      edge.complete();
      edge.assertEqual();
      assertEquals(1, edge.store().feed().orElseThrow().edge().incarnation());
    }
  }

  private Plant pages(PostgresServer of, String at) {
    return Stores.openPlant(PlantAddress.of(of.url(at), reader, () -> SECRET, null));
  }

  private static String[] at(PostgresServer of, String program, String... more) {
    var words = new java.util.ArrayList<>(List.of(program));
    words.addAll(List.of("--host=127.0.0.1", "--port=" + of.port()));
    words.addAll(List.of("--username=" + PostgresServer.SUPERUSER));
    words.addAll(List.of(more));
    return words.toArray(String[]::new);
  }

  @Test
  void aCopyInANewServerIsServedFromAndDeliveredTo() throws Exception {
    Path dump = server.data().resolveSibling("plant.dump");
    server.run(at(server, "pg_dump", "--format=custom", "--file=" + dump, database));
    String roles = server.run(at(server, "pg_dumpall", "--roles-only"));
    delivers(server, database, 40); // is not in the copy
    try (PostgresServer other = PostgresServer.fresh()) {
      Path script = Files.writeString(other.data().resolveSibling("roles.sql"), roles);
      other.run(at(other, "psql", "--quiet", "--file=" + script, "postgres"));
      other.run(at(other, "createdb", "plant"));
      other.run(at(other, "pg_restore", "--dbname=plant", dump.toString()));
      try (Plant plant = pages(other, "plant")) {
        Plant.Edge edge = plant.edges().get(0);
        assertEquals(500, plant.store(edge.id()).readings().lastId());
        assertEquals(500, found(plant).get(0).readings());
        delivers(other, "plant", 60);
        assertEquals(600, plant.store(edge.id()).readings().lastId());
      }
    }
  }

  private static List<Plant.FoundJob> found(Plant plant) {
    return plant.jobs(JobQuery.of(JobQuery.Order.NEWEST, 1).filter(), null, 10);
  }

  /** By the statements that the help gives; the workshop computer goes on, and sends none again. */
  @Test
  void theRecordsOfAClosedJobAreDropped() throws Exception {
    long kept;
    try (EdgeRig edge = new EdgeRig(directory, TestPlant.EDGE, server.port(), server, database)) {
      Job old = edge.store().jobs().find(1).orElseThrow();
      edge.store().jobs().update(old.withState(Job.State.CLOSED), "me", "done");
      Reading last = edge.store().readings().find(500).orElseThrow();
      edge.start();
      edge.complete();
      drop(edge.store().identity(), 1);
      kept = edge.store().jobs().add(Some.job("Next", "M"), "me").id();
      for (int i = 1; i <= 20; i++) {
        Reading next = Some.reading("A", last.stationSequence() + i, kept, last.setUpId());
        edge.store().readings().append(next).join();
      }
      edge.complete();
      assertEquals(20, edge.count("plant.reading"));
    }
    try (Plant plant = pages(server, database)) {
      assertEquals(List.of(kept), found(plant).stream().map(each -> each.job().id()).toList());
      assertEquals(20, found(plant).get(0).readings());
      assertEquals(520, plant.store(plant.edges().get(0).id()).readings().lastId());
    }
  }

  private void drop(String edge, long job) throws Exception {
    String help = Files.readString(Path.of("src/docs/plant.md"));
    String from = "    DELETE FROM plant.profile";
    int begin = help.indexOf(from);
    int end = help.indexOf("\n\n", begin);
    server.execute(
        database,
        help.substring(begin, end)
            .replace("edge_id = …", "edge_id = '" + edge + "'")
            .replace("job_id = …", "job_id = " + job)
            .replace("id = …", "id = " + job));
  }
}
