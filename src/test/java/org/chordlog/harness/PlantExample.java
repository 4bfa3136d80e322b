package org.chordlog.harness;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import org.chordlog.cli.service.PlantService;
import org.chordlog.store.PlantAddress;
import org.chordlog.store.PlantAdmin;
import org.chordlog.store.open.Stores;
import org.chordlog.web.http.WebSettings;

/**
 * A plant on one computer, to be looked at: a PostgreSQL server in a temporary folder, three demo
 * services that deliver to it, and the pages of the plant. Argument: the port of those (8090 if
 * left out); the demo services have the next three. All of it ends with this program.
 */
public final class PlantExample implements AutoCloseable {
  private static final int USUAL_PORT = 8090;
  private static final String PASSWORD = "an example on one computer";

  /** An invented workshop computer, with what its simulator begins from. */
  private record Workshop(String name, String site, int seed) {}

  private static final List<Workshop> WORKSHOPS =
      List.of(
          new Workshop("hall-1", "Main works", 1),
          new Workshop("hall-2", "Main works", 2),
          new Workshop("gate", "North", 3));

  private final int port;
  private final Path folder;
  private final PostgresServer server;
  private final String url;
  private final List<Process> demos = new ArrayList<>();
  private final PlantService pages;

  private PlantExample(int port) throws IOException {
    this.port = port;
    folder = Files.createTempDirectory("chordlog-plant");
    server = PostgresServer.fresh();
    url = "postgresql://127.0.0.1:" + server.port() + "/" + server.database();
    PlantAdmin admin = Stores.plantAdmin(address(PostgresServer.SUPERUSER));
    int unused = admin.create();
    for (Workshop each : WORKSHOPS) {
      demos.add(demo(each, admin.addEdge(each.name(), each.site(), PASSWORD)));
    }
    String reader = admin.addReader("pages", PASSWORD);
    pages = PlantService.start(Stores.openPlant(address(reader)), WebSettings.onLoopback(port));
  }

  private PlantAddress address(String user) {
    return PlantAddress.of(url, user, () -> PASSWORD, null);
  }

  /** Reads {@code plant.yaml} in its data directory, as any service does. */
  private Process demo(Workshop workshop, String login) throws IOException {
    Path data = Files.createDirectories(folder.resolve(workshop.name()));
    Path password = Files.writeString(data.resolve("plant-password"), PASSWORD);
    Files.setPosixFilePermissions(password, PosixFilePermissions.fromString("rw-------"));
    Files.writeString(
        data.resolve("plant.yaml"),
        """
        edge: %s
        site: %s
        database: %s
        user: %s
        passwordFile: plant-password
        """
            .formatted(workshop.name(), workshop.site(), url, login));
    return Children.start(
        new ProcessBuilder(command(workshop, data))
            .redirectErrorStream(true)
            .redirectOutput(data.resolve("log").toFile()));
  }

  private List<String> command(Workshop workshop, Path data) {
    List<String> command =
        ServiceProcess.java(System.getProperty("java.class.path"), "-Djava.awt.headless=true");
    command.addAll(List.of("org.chordlog.Main", "demo", "--data", data.toString()));
    command.addAll(List.of("--seed", String.valueOf(workshop.seed())));
    command.addAll(List.of("--port", String.valueOf(port + workshop.seed())));
    return command;
  }

  private void tell() {
    System.out.println("The plant is at http://127.0.0.1:" + pages.port() + "/");
    WORKSHOPS.forEach(
        each ->
            System.out.printf(
                "%s is at http://127.0.0.1:%d/, its log in %s%n",
                each.name(), port + each.seed(), folder.resolve(each.name()).resolve("log")));
    System.out.println("Its database is " + url + "; Ctrl-C stops it all.");
  }

  @Override
  public void close() {
    pages.close();
    demos.forEach(Process::destroy);
    demos.forEach(each -> each.onExit().join());
    server.close();
    try {
      Directories.delete(folder);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  public static void main(String[] arguments) throws Exception {
    int port = arguments.length == 0 ? USUAL_PORT : Integer.parseInt(arguments[0]);
    PlantExample example = new PlantExample(port);
    Runtime.getRuntime().addShutdownHook(new Thread(example::close, "stop"));
    example.tell();
    new CountDownLatch(1).await();
  }
}
