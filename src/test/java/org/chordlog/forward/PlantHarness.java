package org.chordlog.forward;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Random;
import java.util.concurrent.atomic.AtomicLong;
import org.chordlog.Await;
import org.chordlog.harness.Children;
import org.chordlog.harness.PostgresServer;

/**
 * Kills the process of an edge, its connection and the plant's server in turn, in the middle of
 * measuring and delivering, and proves afterwards that the plant has every row of the edge once.
 *
 * <pre>java … org.chordlog.forward.PlantHarness 20 20 20 1     edge, connection, server, seed</pre>
 */
final class PlantHarness implements AutoCloseable {
  private final Random random;
  private final Path data;
  private final PostgresServer server = PostgresServer.fresh();
  private final String database = TestPlant.create(server);
  private final CuttingRelay relay = new CuttingRelay(server.port());
  private final AtomicLong measured = new AtomicLong();
  private Process edge;

  PlantHarness(Path data, long seed) throws IOException {
    this.data = data;
    this.random = new Random(seed);
    this.edge = start();
  }

  private Process start() throws IOException {
    Process started =
        Children.start(
            Children.program(KilledEdge.class, "192m", data, relay.port(), database)
                .redirectErrorStream(true));
    Thread reader = new Thread(() -> read(started), "edge-output");
    reader.setDaemon(true);
    reader.start();
    return started;
  }

  private void read(Process process) {
    try (BufferedReader out = process.inputReader(StandardCharsets.UTF_8)) {
      for (String line = out.readLine(); line != null; line = out.readLine()) {
        if (line.startsWith("measured ")) {
          measured.set(Long.parseLong(line.substring(9)));
        }
      }
    } catch (IOException e) {
      return; // killed
    }
  }

  /** Some more is delivered, so that what is killed next is at work. */
  private void goOn() throws Exception {
    long until = relay.passed() + 20_000 + random.nextInt(200_000);
    Await.until(() -> relay.passed() > until, () -> "passed " + relay.passed());
  }

  void killEdge() throws Exception {
    goOn();
    edge.destroyForcibly();
    Await.end(edge);
    edge = start();
  }

  void killConnection() throws Exception {
    goOn();
    int before = relay.cuts();
    if (random.nextBoolean()) {
      relay.cutAfter(1 + random.nextInt(60_000));
    } else {
      relay.loseAnswerToCommit(1);
      relay.cutAfter(500_000);
    }
    Await.until(() -> relay.cuts() > before);
    relay.cutAfter(Long.MAX_VALUE);
    relay.loseAnswerToCommit(-1);
  }

  void killServer() throws Exception {
    goOn();
    server.kill();
    server.start();
  }

  /** What was measured and how many rows are at the plant; throws where they differ. */
  String prove() throws Exception {
    goOn();
    edge.destroyForcibly();
    Await.end(edge);
    try (EdgeRig here = new EdgeRig(data, TestPlant.EDGE, relay.port(), server, database)) {
      here.start();
      here.complete();
      here.assertEqual();
      if (here.store().readings().lastId() < measured.get()) {
        throw new AssertionError("the edge itself lost readings that it had acknowledged");
      }
      return "%,d readings and every other row equal at the plant; %d rows of the ledger; history %d"
          .formatted(
              here.count("plant.reading"),
              here.count("plant.batch"),
              here.store().feed().orElseThrow().edge().incarnation());
    }
  }

  @Override
  public void close() throws IOException {
    edge.destroyForcibly();
    relay.close();
    server.close();
  }

  static String run(int edges, int connections, int servers, long seed) throws Exception {
    Path data = Files.createTempDirectory("plant-harness").resolve("data");
    try (PlantHarness harness = new PlantHarness(data, seed)) {
      for (int i = 0; i < Math.max(edges, Math.max(connections, servers)); i++) {
        if (i < edges) {
          harness.killEdge();
        }
        if (i < connections) {
          harness.killConnection();
        }
        if (i < servers) {
          harness.killServer();
        }
      }
      return "%d kills of the edge, %d of its connection, %d of the server: %s"
          .formatted(edges, connections, servers, harness.prove());
    }
  }

  public static void main(String[] arguments) throws Exception {
    System.out.println(
        run(
            Integer.parseInt(arguments[0]),
            Integer.parseInt(arguments[1]),
            Integer.parseInt(arguments[2]),
            Long.parseLong(arguments[3])));
    System.exit(0);
  }
}
