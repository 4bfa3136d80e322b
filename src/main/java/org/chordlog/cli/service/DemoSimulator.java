package org.chordlog.cli.service;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.chordlog.simulator.Simulator;
import org.jspecify.annotations.Nullable;

/** The simulator in a process of its own; it ends with this one, also where this one is killed. */
final class DemoSimulator implements AutoCloseable {
  private static final String PROGRAM = "org.chordlog.Main";
  private final List<String> command;
  private Process process;
  private @Nullable String address;

  private DemoSimulator(List<String> command, Process process) {
    this.command = command;
    this.process = process;
  }

  /** Starts it; {@link #address()} waits until it says where it is. */
  static DemoSimulator start(
      String scenario,
      double speed,
      @Nullable Long seed,
      int fromPiece,
      Path data,
      boolean byHand) {
    List<String> command = command(scenario, speed, seed, data);
    command.addAll(List.of("--from-piece", Integer.toString(fromPiece)));
    if (byHand) {
      command.add("--by-hand");
    }
    return new DemoSimulator(command, begin(command));
  }

  /** The same for a line. */
  static DemoSimulator startLine(String scenario, double speed, @Nullable Long seed, Path data) {
    List<String> command = command(scenario, speed, seed, data);
    return new DemoSimulator(command, begin(command));
  }

  private static List<String> command(
      String scenario, double speed, @Nullable Long seed, Path data) {
    List<String> command = new ArrayList<>(java());
    command.addAll(List.of("simulate", "--until-input-ends", "--scenario", scenario));
    command.addAll(List.of("--speed", Double.toString(speed)));
    command.addAll(List.of("--link", data.toAbsolutePath().resolve("indicator").toString()));
    if (seed != null) {
      command.addAll(List.of("--seed", seed.toString()));
    }
    return command;
  }

  private static Process begin(List<String> command) {
    try {
      return new ProcessBuilder(command).redirectError(ProcessBuilder.Redirect.INHERIT).start();
    } catch (IOException e) {
      throw new UncheckedIOException(e.getMessage(), e);
    }
  }

  /** Plays from the flat again, where the link keeps its path. */
  synchronized void again() {
    if (address().startsWith("/")) {
      process.destroy();
      process = begin(command);
      firstLine(process);
    }
  }

  /** Moves the rollers by that much on their scale; the first piece that is bent so. */
  synchronized int move(double amount) throws IOException {
    return answer("move " + amount, Simulator.MOVED);
  }

  /** The piece at the bridge, also where pieces before it were missed. */
  synchronized int piece() throws IOException {
    return answer("piece", Simulator.NEWEST);
  }

  /** Has people of the simulator measure, or not; waits for its answer. */
  synchronized String study(String line) throws IOException {
    address();
    process.outputWriter(StandardCharsets.UTF_8).append(line + "\n").flush();
    return firstLine(process);
  }

  private int answer(String line, String before) throws IOException {
    address();
    process.outputWriter(StandardCharsets.UTF_8).append(line + "\n").flush();
    return Integer.parseInt(firstLine(process).substring(before.length()).strip());
  }

  private static List<String> java() {
    String home = System.getProperty("java.home");
    return List.of(
        Path.of(home, "bin", "java").toString(),
        "-XX:TieredStopAtLevel=1",
        "-XX:+UseSerialGC",
        "--enable-native-access=ALL-UNNAMED",
        "-cp",
        System.getProperty("java.class.path"),
        PROGRAM);
  }

  private static String firstLine(Process process) {
    try {
      String line = process.inputReader(StandardCharsets.UTF_8).readLine();
      if (line == null) {
        throw new IOException("The simulator did not start.");
      }
      return line;
    } catch (IOException e) {
      throw new UncheckedIOException(e.getMessage(), e);
    }
  }

  /** A path, or host:port. */
  synchronized String address() {
    String known = address == null ? firstLine(process) : address;
    address = known;
    return known;
  }

  /** That many: an encoder's own link comes behind that of the indicator. Asked once. */
  synchronized List<String> addresses(int count) {
    List<String> all = new ArrayList<>(List.of(address()));
    while (all.size() < count) {
      all.add(firstLine(process));
    }
    return all;
  }

  @Override
  public synchronized void close() {
    process.destroy();
  }
}
