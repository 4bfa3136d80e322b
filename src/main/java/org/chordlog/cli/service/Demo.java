package org.chordlog.cli.service;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.stream.Stream;
import org.chordlog.cli.common.ExitCode;
import org.chordlog.cli.common.NativeFolder;
import org.chordlog.forward.PlantSettings;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Check;
import org.chordlog.notify.AlertWatch;
import org.chordlog.simulator.Forgetful;
import org.chordlog.simulator.LineScenario;
import org.chordlog.simulator.Scenario;
import org.chordlog.simulator.ScenarioFile;
import org.chordlog.station.StationClock;
import org.chordlog.station.StationKeeper;
import org.chordlog.store.Store;
import org.chordlog.store.open.Stores;
import org.chordlog.web.http.WebSettings;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** The simulator and the service side by side, with nothing shared but the device. */
@Command(
    name = "demo",
    mixinStandardHelpOptions = true,
    description = {
      "Starts the simulator in a process of its own, and the service on the device it opens.",
      "Started again on the same data, it goes on with the same job. Where there is an alerts.yaml"
          + " in its data directory, people are told of its alerts."
    })
public final class Demo implements Callable<Integer> {
  private static final Path USUAL_DATA = NativeFolder.shared().resolve("chordlog-demo");

  @Spec private CommandSpec spec;

  @Option(
      names = "--port",
      defaultValue = "8080",
      paramLabel = "N",
      description = "Port of the pages, 0 for any free one (${DEFAULT-VALUE}).")
  private int port;

  @Option(
      names = "--data",
      paramLabel = "DIR",
      description = "Data directory (default: chordlog-demo in the temporary folder).")
  private Path data = USUAL_DATA;

  @Option(
      names = "--scenario",
      paramLabel = "SCENARIO",
      defaultValue = ScenarioFile.DEMO,
      description = "A scenario file, or the name of one that is built in (${DEFAULT-VALUE}).")
  private String scenario;

  @Option(
      names = "--line",
      description = {
        "A gauge in a line: the section runs through the bridge, with an eccentric entry roller"
            + " (short for --scenario "
            + ScenarioFile.LINE
            + ")."
      })
  private boolean line;

  @Option(
      names = "--speed",
      paramLabel = "FACTOR",
      defaultValue = "6",
      description = "Speed-up factor (${DEFAULT-VALUE}).")
  private double speed;

  @Option(
      names = "--seed",
      paramLabel = "N",
      description = "Random seed (default: as the scenario says).")
  private @Nullable Long seed;

  @Option(
      names = "--operator",
      defaultValue = "written",
      paramLabel = "WHO",
      description = {
        "Who moves the rollers: written (as the scenario says), follows (as advised), ignores,"
            + " chases (each reading) (${DEFAULT-VALUE})."
      })
  private String operator;

  @Option(
      names = "--unrecorded",
      defaultValue = "0",
      paramLabel = "N",
      description = {
        "The operator forgets to record every N-th move of the rollers; 1: all of them, 0: none"
            + " (${DEFAULT-VALUE})."
      })
  private int unrecorded;

  @Override
  public Integer call() throws IOException, InterruptedException {
    Check.within("--speed", speed, 0.01, 100);
    OutOfMemory.endsTheProgram();
    if (line || ScenarioFile.isLine(scenario)) {
      return playLine(line && scenario.equals(ScenarioFile.DEMO) ? ScenarioFile.LINE : scenario);
    }
    RollerHand hand = hand();
    @Nullable AlertSource told = AlertSource.in(data);
    Forgetful memory = new Forgetful(unrecorded);
    Scenario played = ScenarioFile.read(scenario);
    DemoSimulator first = isNew() ? simulator(1) : null;
    Store store = open(first);
    DemoRecords records = new DemoRecords(played, store);
    int piece = records.prepare();
    double moved = hand.byHand() ? records.movedMm() : 0;
    try (DemoSimulator simulator = first == null ? simulator(piece) : first;
        DemoBench bench =
            new DemoBench(played, simulator, speed, new DemoMoves(hand, moved, memory));
        Service service =
            Service.on(
                store,
                bench,
                WebSettings.onLoopback(port),
                StationKeeper.forThisRun(),
                StationClock.system(),
                alerting())) {
      moveBack(simulator, moved);
      Runtime.getRuntime().addShutdownHook(new Thread(() -> stop(service, simulator), "stop"));
      bench.servedAt(service.port());
      tell(service, simulator, told);
      new CountDownLatch(1).await();
    }
    return ExitCode.WELL;
  }

  /** Pieces run through without an operator; a line that starts again begins with a new piece. */
  private Integer playLine(String name) throws IOException, InterruptedException {
    LineScenario played = ScenarioFile.readLine(name);
    @Nullable AlertSource told = AlertSource.in(data);
    DemoSimulator simulator = DemoSimulator.startLine(name, speed, seed, data);
    try (simulator;
        Store store = open(simulator);
        Service service = lineService(played, store, simulator)) {
      Runtime.getRuntime().addShutdownHook(new Thread(() -> stop(service, simulator), "stop"));
      tell(service, simulator, told);
      new CountDownLatch(1).await();
    }
    return ExitCode.WELL;
  }

  private Service lineService(LineScenario played, Store store, DemoSimulator simulator) {
    LineDemo demo = new LineDemo(played, speed);
    demo.prepare(store);
    return Service.on(
        store,
        stations -> demo.start(stations, simulator.addresses(demo.links())),
        WebSettings.onLoopback(port),
        StationKeeper.forThisRun(),
        StationClock.system(),
        alerting());
  }

  /** As a service, but at once: its links are its own. */
  private Alerting alerting() {
    return Alerting.of(data, AlertWatch.Times.AT_ONCE);
  }

  /** A simulator that starts again is where the scenario begins. */
  private static void moveBack(DemoSimulator simulator, double moved) throws IOException {
    if (moved != 0) {
      int unused = simulator.move(moved);
    }
  }

  private RollerHand hand() {
    return Stream.of(RollerHand.values())
        .filter(each -> each.name().equalsIgnoreCase(operator))
        .findFirst()
        .orElseThrow(
            () ->
                new BadInput(
                    "--operator", operator, "is nobody", "written, follows, ignores, chases"));
  }

  /** With nothing stored yet, the simulator starts at the first piece and need not wait. */
  private boolean isNew() {
    return !Stores.files(data).exist();
  }

  private Store open(@Nullable DemoSimulator first) {
    try {
      return Stores.open(data);
    } catch (RuntimeException e) {
      if (first != null) {
        first.close();
      }
      throw e;
    }
  }

  private DemoSimulator simulator(int fromPiece) throws IOException {
    return DemoSimulator.start(scenario, speed, seed, fromPiece, data, hand().byHand());
  }

  private void tell(Service service, DemoSimulator simulator, @Nullable AlertSource told) {
    PlantSettings plant = Service.plantOf(data);
    if (plant != null) {
      service.deliver(plant);
    }
    if (told != null) {
      service.tell(told);
    }
    PrintWriter out = spec.commandLine().getOut();
    out.println("The simulator is at " + simulator.address());
    out.println("Chordlog is at http://" + WebSettings.LOOPBACK + ":" + service.port() + "/");
    out.println("Its records are in " + data.toAbsolutePath() + "; Ctrl-C stops it.");
    out.flush();
  }

  private static void stop(Service service, DemoSimulator simulator) {
    service.close();
    simulator.close();
  }
}
