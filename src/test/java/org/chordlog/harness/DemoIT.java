package org.chordlog.harness;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.BufferedReader;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.IntStream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.chordlog.Await;
import org.chordlog.cli.common.ExitCode;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The main job from end to end: simulator, pseudo-terminal, service, restart, export. */
final class DemoIT {
  private static final int TERMINATED = 128 + 15;
  private static final int SUBGROUP = 5;

  /** d2 for n = 5, ASTM MNL 7 as printed (check of the within sigma, to its three decimals). */
  private static final double D2 = 2.326;

  private static final double LSL = 1788;
  private static final double USL = 1812;

  @TempDir Path temporary;
  private Path directory;

  @BeforeEach
  void nameWhatOtherSyntaxesUse() throws IOException {
    directory = Files.createDirectory(temporary.resolve("bends #2: it's {a}? 50 %"));
  }

  @Test
  void readingsGoOnAfterARestartAndTheStatisticsAreThoseOfTheExportedColumn() throws Exception {
    int first = runUntil(8);
    int both = runUntil(first + 8);
    List<Double> radii = exported();
    assertEquals(both, radii.size(), 2.0, "what was shown is kept");
    JsonNode figures = figures();
    double mean = radii.stream().mapToDouble(x -> x).average().orElseThrow();
    assertEquals(mean, value(figures, "mean"), 1e-9);
    double sigma = meanRange(radii) / D2;
    assertEquals((USL - LSL) / (6 * sigma), value(figures, "Cp"), 1e-3);
    double nearer = Math.min(USL - mean, mean - LSL);
    assertEquals(nearer / (3 * sigma), value(figures, "Cpk"), 1e-3);
  }

  /** The number on the scale is not what it was after the last recorded move. */
  @Test
  void aForgottenMoveIsAskedAboutAndAKilledDemoLeavesNoSimulatorBehind() throws Exception {
    Process process = demo("--operator", "chases", "--unrecorded", "2", "--speed", "20");
    try {
      BufferedReader out = process.inputReader(StandardCharsets.UTF_8);
      assertTrue(out.readLine().startsWith("The simulator is at "));
      URI address = URI.create(out.readLine().replace("Chordlog is at ", ""));
      Await.until(() -> asked(address).contains("UNRECORDED_MOVE"));
      endsWithItsSimulator(process);
    } finally {
      process.destroyForcibly();
    }
  }

  private static void endsWithItsSimulator(Process demo) throws Exception {
    List<ProcessHandle> simulators = demo.descendants().toList();
    assertEquals(1, simulators.size());
    demo.destroyForcibly();
    Await.until(() -> simulators.stream().noneMatch(ProcessHandle::isAlive));
  }

  private static List<String> asked(URI address) throws Exception {
    return json(address.resolve("/api/stations/demo/overview"))
        .at("/correction/notices")
        .findValuesAsText("kind");
  }

  /** Runs the demo until the job has so many readings; how many it showed at the end. */
  private int runUntil(int readings) throws Exception {
    Process process = demo();
    try {
      BufferedReader out = process.inputReader(StandardCharsets.UTF_8);
      assertTrue(out.readLine().startsWith("The simulator is at "));
      URI address = URI.create(out.readLine().replace("Chordlog is at ", ""));
      Await.until(() -> shown(address) >= readings);
      int shown = shown(address);
      process.destroy();
      Await.end(process);
      assertEquals(TERMINATED, process.exitValue());
      return shown;
    } finally {
      process.destroyForcibly();
    }
  }

  private Process demo(String... options) throws Exception {
    List<String> command = ServiceProcess.briefJar("-Xmx256m");
    command.addAll(List.of("demo", "--port", "0", "--data", directory.toString()));
    command.addAll(List.of(options));
    return Children.start(
        new ProcessBuilder(command)
            .redirectError(ProcessBuilder.Redirect.appendTo(directory.resolve("log").toFile())));
  }

  private static int shown(URI address) throws Exception {
    return json(address.resolve("/api/jobs")).at("/items/0/readings").asInt();
  }

  private static JsonNode json(URI address) throws Exception {
    HttpRequest request = HttpRequest.newBuilder(address).build();
    String body = HttpClient.newHttpClient().send(request, BodyHandlers.ofString()).body();
    return new ObjectMapper().readTree(body);
  }

  private List<Double> exported() throws Exception {
    Path file = directory.resolve("readings.csv");
    Ran ran =
        Ran.command(
            "export", "--data", directory.toString(), "--job", "1", "--output", file.toString());
    assertEquals(ExitCode.WELL, ran.code(), ran.err());
    CSVFormat format =
        CSVFormat.DEFAULT
            .builder()
            .setHeader()
            .setSkipHeaderRecord(true)
            .setCommentMarker('#')
            .get();
    try (CSVParser rows = CSVParser.parse(Files.newBufferedReader(file), format)) {
      return rows.stream()
          .filter(row -> row.get("excluded_reason").isEmpty())
          .map(row -> Double.valueOf(row.get("radius_mm")))
          .toList();
    }
  }

  private JsonNode figures() throws Exception {
    Path file = directory.resolve("figures.csv");
    Ran ran =
        Ran.command(
            "report", "--job", "1", "--data", directory.toString(), "--output", file.toString());
    assertEquals(ExitCode.WELL, ran.code(), ran.err());
    CSVFormat format = CSVFormat.DEFAULT.builder().setHeader().setSkipHeaderRecord(true).get();
    var figures = new ObjectMapper().createObjectNode();
    try (CSVParser rows = CSVParser.parse(Files.newBufferedReader(file), format)) {
      rows.stream()
          .filter(row -> row.get("scope").equals("job"))
          .forEach(row -> figures.put(row.get("figure"), Double.valueOf(row.get("value"))));
    }
    return figures;
  }

  private static double value(JsonNode figures, String name) {
    assertTrue(figures.has(name), () -> name + " is not in " + figures);
    return figures.get(name).asDouble();
  }

  private static double meanRange(List<Double> radii) {
    return IntStream.range(0, radii.size() / SUBGROUP)
        .mapToObj(i -> radii.subList(i * SUBGROUP, (i + 1) * SUBGROUP).stream())
        .map(group -> group.mapToDouble(x -> x).summaryStatistics())
        .mapToDouble(group -> group.getMax() - group.getMin())
        .average()
        .orElseThrow();
  }
}
