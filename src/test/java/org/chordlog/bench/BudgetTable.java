package org.chordlog.bench;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.chordlog.harness.Children;
import org.chordlog.harness.ServiceProcess;

/**
 * Runs the load program of every budget, each in a process of its own, and prints the table as it
 * is in src/docs/measurements.md. {@code mvn -Pbenchmark verify} runs it after the jar is built.
 */
public final class BudgetTable {
  /** A program with its arguments, and those with which it only shows that it works. */
  private record Program(Class<?> main, List<String> usual, List<String> brief) {
    List<String> arguments() {
      return Boolean.getBoolean("chordlog.brief") ? brief : usual;
    }
  }

  private static final String LONGEST = System.getProperty("chordlog.longest", "10000000");

  private static final List<Program> PROGRAMS =
      List.of(
          new Program(PortLoad.class, List.of("7", "2"), List.of("1", "1")),
          new Program(StoreLoad.class, List.of("7"), List.of("1")),
          new Program(StationsLoad.class, List.of("60", "64"), List.of("10", "64")),
          new Program(
              GrowthLoad.class,
              List.of("1000", "100000", "1000000", LONGEST),
              List.of("1000", "10000")),
          new Program(StartLoad.class, List.of("7"), List.of("1")),
          new Program(TraceLoad.class, List.of(), List.of()));

  private BudgetTable() {}

  public static void main(String[] arguments) throws Exception {
    long start = System.nanoTime();
    List<String> rows = new ArrayList<>();
    boolean allRan = true;
    for (Program program : PROGRAMS) {
      System.out.println("--- " + program.main().getSimpleName());
      allRan &= run(program, rows);
      System.out.printf("load %s, %.0f s since the start%n", load(), seconds(start));
    }
    System.out.println();
    System.out.println(machine());
    System.out.println();
    System.out.println("| what | figure | baseline of the same run | ratio | budget | |");
    System.out.println("|---|---|---|---|---|---|");
    rows.forEach(System.out::println);
    System.out.printf("%nin %.0f s%n", seconds(start));
    if (!allRan) {
      System.exit(1);
    }
  }

  private static double seconds(long start) {
    return (System.nanoTime() - start) / 1e9;
  }

  /** Adds its rows; false when it failed, which does not keep the others from running. */
  private static boolean run(Program program, List<String> rows)
      throws IOException, InterruptedException {
    List<String> command =
        ServiceProcess.java(
            System.getProperty("java.class.path"),
            "-Djava.awt.headless=true",
            "-Dchordlog.jar=" + ServiceProcess.jar());
    command.add(program.main().getName());
    command.addAll(program.arguments());
    Process process =
        Children.start(new ProcessBuilder(command).redirectError(ProcessBuilder.Redirect.INHERIT));
    try (BufferedReader said =
        new BufferedReader(
            new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8))) {
      for (String line = said.readLine(); line != null; line = said.readLine()) {
        System.out.println(line);
        BudgetRow.row(line).ifPresent(rows::add);
      }
    }
    int code = process.waitFor();
    if (code != 0) {
      rows.add("| " + program.main().getSimpleName() + " | failed with " + code + " | | | | |");
    }
    return code == 0;
  }

  private static String machine() throws IOException {
    return String.format(
        "%s; %d cores, %d GiB, Linux %s, Java %s; load of the machine at the end %s; %s",
        line("/proc/cpuinfo", "model name"),
        Runtime.getRuntime().availableProcessors(),
        Long.parseLong(line("/proc/meminfo", "MemTotal").replaceAll("\\D", "")) >> 20,
        System.getProperty("os.version"),
        Runtime.version(),
        load(),
        LocalDate.now(ZoneOffset.UTC));
  }

  private static String load() throws IOException {
    return Files.readString(Path.of("/proc/loadavg")).split(" ", 2)[0];
  }

  private static String line(String file, String key) throws IOException {
    try (Stream<String> lines = Files.lines(Path.of(file))) {
      return lines
          .filter(line -> line.startsWith(key))
          .findFirst()
          .map(line -> line.substring(line.indexOf(':') + 1).strip())
          .orElse("unknown");
    }
  }
}
