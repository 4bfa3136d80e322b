package org.chordlog.bench;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.chordlog.harness.Children;
import org.chordlog.harness.EventNotes;
import org.chordlog.harness.ServiceProcess;

/**
 * From the start of the process {@code chordlog demo} on an empty directory to the first reading at
 * an event client; the baseline is the process {@code chordlog --version} from start to end. In
 * turns, medians. Argument: rounds (7).
 */
public final class StartLoad {
  private static final int ROUNDS = 7;
  private static final double BUDGET_SECONDS = 3;

  private StartLoad() {}

  public static void main(String[] arguments) throws Exception {
    int rounds = arguments.length > 0 ? Integer.parseInt(arguments[0]) : ROUNDS;
    double[] bare = new double[rounds];
    double[] demo = new double[rounds];
    for (int i = 0; i < rounds; i++) {
      bare[i] = bare();
      demo[i] = demo();
      System.out.printf("version %.2f s, demo to first reading %.2f s%n", bare[i], demo[i]);
    }
    double median = StoreLoad.median(demo);
    double baseline = StoreLoad.median(bare);
    new BudgetRow(
            "process start to first reading visible in `demo`",
            "%.2f s".formatted(median),
            "%.2f s (`chordlog --version`)".formatted(baseline),
            median / baseline,
            "under 3 s",
            median < BUDGET_SECONDS)
        .print();
  }

  private static double bare() throws IOException, InterruptedException {
    long start = System.nanoTime();
    Process process = Children.start(new ProcessBuilder(command("--version")));
    process.getInputStream().readAllBytes();
    process.waitFor();
    return seconds(start);
  }

  private static List<String> command(String... arguments) {
    List<String> command = new ArrayList<>(ServiceProcess.java(ServiceProcess.jar().toString()));
    command.add("org.chordlog.Main");
    command.addAll(List.of(arguments));
    return command;
  }

  private static double demo() throws Exception {
    Path data = Files.createTempDirectory("start-load");
    long start = System.nanoTime();
    Process process =
        Children.start(
            new ProcessBuilder(command("demo", "--port", "0", "--data", data.toString()))
                .redirectError(ProcessBuilder.Redirect.DISCARD));
    try (BufferedReader said =
        new BufferedReader(
            new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8))) {
      return firstReading(address(said), start);
    } finally {
      process.destroy();
      process.waitFor();
      StoreLoad.delete(data);
    }
  }

  private static URI address(BufferedReader said) throws IOException {
    for (String line = said.readLine(); line != null; line = said.readLine()) {
      if (line.contains("http://")) {
        return URI.create(line.substring(line.indexOf("http://")));
      }
    }
    throw new IOException("the demo did not start");
  }

  private static double firstReading(URI address, long start) throws Exception {
    CountDownLatch heard = new CountDownLatch(1);
    double[] took = new double[1];
    EventNotes notes =
        EventNotes.listen(
            address,
            "",
            event -> {
              if (event.name().equals("reading") && heard.getCount() > 0) {
                took[0] = seconds(start);
                heard.countDown();
              }
            });
    boolean came = heard.await(60, TimeUnit.SECONDS);
    notes.close();
    if (!came) {
      throw new IOException("no reading within a minute");
    }
    return took[0];
  }

  private static double seconds(long start) {
    return (System.nanoTime() - start) / 1e9;
  }
}
