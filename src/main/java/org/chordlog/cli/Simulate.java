package org.chordlog.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import java.util.function.Consumer;
import org.chordlog.measure.Check;
import org.chordlog.simulator.Contact;
import org.chordlog.simulator.PseudoTerminal;
import org.chordlog.simulator.Scenario;
import org.chordlog.simulator.ScenarioFile;
import org.chordlog.simulator.Simulator;
import org.chordlog.simulator.TruthFile;
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
      "Plays a virtual machine, operator and indicator on a pseudo-terminal and prints its path.",
      "Where there is no pseudo-terminal it takes a TCP port and says so."
    })
final class Simulate implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Option(
      names = "--scenario",
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
      defaultValue = "1",
      description = "How much faster than life (${DEFAULT-VALUE}).")
  private double speed;

  @Option(names = "--seed", description = "Chance starts here (default: as the scenario says).")
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

  @Override
  public Integer call() throws IOException, InterruptedException {
    Check.within("--speed", speed, 0.01, 1000);
    Check.within("--from-piece", fromPiece, 1, 1_000_000);
    Scenario played = ScenarioFile.read(scenario);
    if (truth == null) {
      return play(played, contact -> {});
    }
    try (TruthFile file = TruthFile.create(truth)) {
      return play(played, file);
    }
  }

  private int play(Scenario played, Consumer<Contact> contacts)
      throws IOException, InterruptedException {
    try (Simulator simulator = open(played, contacts)) {
      Runtime.getRuntime().addShutdownHook(new Thread(simulator::close, "unplug"));
      spec.commandLine().getOut().println(simulator.address());
      spec.commandLine().getOut().flush();
      simulator.goOnFrom(fromPiece);
      simulator.run();
    }
    return Chordlog.WELL;
  }

  private Simulator open(Scenario played, Consumer<Contact> contacts) throws IOException {
    long start = seed == null ? played.seed() : seed;
    if (tcp != null) {
      return Simulator.onSocket(played, speed, start, tcp, contacts);
    }
    if (!PseudoTerminal.available()) {
      spec.commandLine().getErr().println("No pseudo-terminal here; a TCP port takes its place.");
      return Simulator.onSocket(played, speed, start, 0, contacts);
    }
    return Simulator.onTerminal(played, speed, start, link, contacts);
  }
}
