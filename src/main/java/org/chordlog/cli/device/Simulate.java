package org.chordlog.cli.device;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import java.util.function.Consumer;
import org.chordlog.cli.common.ExitCode;
import org.chordlog.file.FileTrouble;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Check;
import org.chordlog.simulator.Contact;
import org.chordlog.simulator.LineScenario;
import org.chordlog.simulator.LineSimulator;
import org.chordlog.simulator.LineTruth;
import org.chordlog.simulator.MoveScale;
import org.chordlog.simulator.PseudoTerminal;
import org.chordlog.simulator.Scenario;
import org.chordlog.simulator.ScenarioFile;
import org.chordlog.simulator.Simulator;
import org.chordlog.simulator.Simulators;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Plays a virtual machine, operator and indicator on a device of its own. */
@Command(
    name = "simulate",
    mixinStandardHelpOptions = true,
    description = {
      "Plays a virtual machine, operator and indicator on a pseudo-terminal and prints"
          + " its path.",
      "Where there is no pseudo-terminal it takes a TCP port and says so.",
      "These may be typed while it plays; a number in front picks one of several stations:",
      "  faults: unplug 5, noise 1, stuck 1, 2 silence 1",
      "  move the rollers on their scale: move 0.05",
      "  measure a gauge study: study begin; measure Ann, 3, start; study end",
      "  on a line: stop 5, jog 200, swing 3, length dead, length reversed"
    })
public final class Simulate implements Callable<Integer> {
  private static final int MOST_PORT = 65_535;

  @Spec private CommandSpec spec;

  @Option(
      names = "--scenario",
      paramLabel = "SCENARIO",
      defaultValue = ScenarioFile.DEMO,
      description = "A scenario file, or the name of one that is built in (${DEFAULT-VALUE}).")
  private String scenario;

  @Option(
      names = "--link",
      paramLabel = "PATH",
      description = "Keep a symbolic link to the device here.")
  private @Nullable Path link;

  @Option(
      names = "--speed",
      paramLabel = "FACTOR",
      defaultValue = "1",
      description = "Speed-up factor (${DEFAULT-VALUE}).")
  private double speed;

  @Option(
      names = "--seed",
      paramLabel = "N",
      description = "Random seed (default: as the scenario says).")
  private @Nullable Long seed;

  @Option(
      names = "--from-piece",
      defaultValue = "1",
      paramLabel = "N",
      description = "The first piece that is measured (${DEFAULT-VALUE}).")
  private int fromPiece;

  @Option(
      names = "--truth",
      paramLabel = "FILE",
      description = "Write what was true of each contact, as CSV.")
  private @Nullable Path truth;

  @Option(
      names = "--tcp",
      paramLabel = "PORT",
      description = "Listen on this TCP port instead of a pseudo-terminal; 0: a free one.")
  private @Nullable Integer tcp;

  @Option(
      names = "--profile",
      paramLabel = "PROFILE",
      description = "Speak this built-in frame profile (default: as the scenario says).")
  private @Nullable String profile;

  @Option(
      names = "--stations",
      paramLabel = "N",
      defaultValue = "1",
      description = {
        "So many at once, each with a seed, link (PATH-1, PATH-2...), truth file and TCP port"
            + " of its own (${DEFAULT-VALUE})."
      })
  private int stations;

  @Option(
      names = "--by-hand",
      description = "Make none of the scenario's corrections: whoever types moves the rollers.")
  private boolean byHand;

  @Option(
      names = "--scale-unit",
      defaultValue = "1",
      paramLabel = "MM",
      description = {
        "What one unit of the rollers' scale moves them by, mm; negative: a higher number opens"
            + " (${DEFAULT-VALUE})."
      })
  private double scaleUnit;

  @Option(
      names = "--lost-motion",
      defaultValue = "0",
      paramLabel = "MM",
      description = "What a change of direction loses (${DEFAULT-VALUE}).")
  private double lostMotion;

  @Option(
      names = "--move-error",
      defaultValue = "0",
      paramLabel = "MM",
      description = "Standard deviation of each move of the rollers (${DEFAULT-VALUE}).")
  private double moveError;

  @Option(
      names = "--until-input-ends",
      description = "End with standard input, so that a program that starts this can't leave it.")
  private boolean untilInputEnds;

  @Override
  public Integer call() throws IOException, InterruptedException {
    Check.within("--speed", speed, 0.01, 1000);
    Check.within("--from-piece", fromPiece, 1, 1_000_000);
    Check.within("--stations", stations, 1, 64);
    if (tcp != null) {
      Check.within("--tcp", tcp, 0, MOST_PORT - 2 * stations);
    }
    requireFolder("--link", link);
    requireFolder("--truth", truth);
    try (Simulators simulators = new Simulators()) {
      Runtime.getRuntime().addShutdownHook(new Thread(simulators::close, "unplug"));
      if (ScenarioFile.isLine(scenario)) {
        startLines(simulators);
      } else {
        start(simulators);
      }
      simulators.addresses().forEach(spec.commandLine().getOut()::println);
      spec.commandLine().getOut().flush();
      Runnable atEnd = untilInputEnds ? simulators::close : () -> {};
      simulators.obey(System.in, spec.commandLine().getOut(), spec.commandLine().getErr(), atEnd);
      simulators.await();
    }
    return ExitCode.WELL;
  }

  private static void requireFolder(String option, @Nullable Path file) {
    if (file == null) {
      return;
    }
    Path folder = file.toAbsolutePath().getParent();
    if (folder != null && !Files.isDirectory(folder)) {
      throw new BadInput(
          option,
          file,
          FileTrouble.writing(new NoSuchFileException(file.toString())),
          "a name in another folder");
    }
  }

  private void start(Simulators simulators) throws IOException {
    Scenario read = ScenarioFile.read(scenario);
    Scenario spoken = profile == null ? read : read.with(read.indicator().speaking(profile));
    Scenario played = byHand ? spoken.withoutCorrections() : spoken;
    MoveScale scale = new MoveScale(scaleUnit, lostMotion, moveError);
    for (int station = 1; station <= stations; station++) {
      Simulator simulator =
          open(played, scale, station, simulators.truth(numbered(truth, station)));
      simulator.goOnFrom(fromPiece);
      simulators.start(simulator);
    }
  }

  private void startLines(Simulators simulators) throws IOException {
    if (profile != null || fromPiece > 1) {
      throw new BadInput("--scenario", scenario, "is a line", "no --profile and no --from-piece");
    }
    LineScenario played = ScenarioFile.readLine(scenario);
    for (int station = 1; station <= stations; station++) {
      simulators.start(openLine(played, station, simulators.lineTruth(numbered(truth, station))));
    }
  }

  private LineSimulator openLine(LineScenario played, int station, Consumer<LineTruth> truths)
      throws IOException {
    long start = (seed == null ? played.seed() : seed) + 1000L * (station - 1);
    if (tcp != null || !PseudoTerminal.available()) {
      int port = tcp == null || tcp == 0 ? 0 : tcp + 2 * (station - 1);
      return LineSimulator.onSocket(played, speed, start, port, truths);
    }
    return LineSimulator.onTerminal(played, speed, start, numbered(link, station), truths);
  }

  private Simulator open(Scenario played, MoveScale scale, int station, Consumer<Contact> contacts)
      throws IOException {
    long start = (seed == null ? played.seed() : seed) + 1000L * (station - 1);
    if (tcp != null) {
      int port = tcp == 0 ? 0 : tcp + station - 1;
      return Simulator.onSocket(played, scale, speed, start, port, contacts);
    }
    if (!PseudoTerminal.available()) {
      spec.commandLine().getErr().println("No pseudo-terminal here; a TCP port takes its place.");
      return Simulator.onSocket(played, scale, speed, start, 0, contacts);
    }
    return Simulator.onTerminal(played, scale, speed, start, numbered(link, station), contacts);
  }

  private @Nullable Path numbered(@Nullable Path path, int station) {
    return path == null || stations == 1 ? path : Path.of(path + "-" + station);
  }
}
