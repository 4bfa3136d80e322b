package org.chordlog.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.BufferedReader;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.chordlog.Await;
import org.chordlog.cli.common.ExitCode;
import org.chordlog.harness.Children;
import org.chordlog.harness.Ran;
import org.chordlog.harness.ServiceProcess;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The service as a process, from the jar. */
final class ServeIT {
  private static final int TERMINATED = 128 + 15;
  private static final String STATION =
      """
      stations:
        - name: A
          link: {kind: tcp, host: 127.0.0.1, port: 1}
          profile: signed-mm-lines
          indicator: {resolutionMm: 0.001, permissibleErrorMm: 0.003, travelMm: 12.7}
          bridge: {name: long, spanMm: 200, spanUncertaintyMm: 0.02}
      """;

  @TempDir Path directory;
  private Path config;

  @BeforeEach
  void writeStationFile() throws Exception {
    config = Files.writeString(directory.resolve("stations.yaml"), STATION);
  }

  @Test
  void tellsItsAddressServesAndEndsAtSigtermWithAClientListening() throws Exception {
    Process process = serve("--port", "0");
    BufferedReader out = process.inputReader(StandardCharsets.UTF_8);
    URI address = URI.create(out.readLine().replace("Chordlog is at ", ""));
    HttpClient client = HttpClient.newHttpClient();
    HttpRequest health = HttpRequest.newBuilder(address.resolve("/health")).build();
    assertEquals(200, client.send(health, BodyHandlers.ofString()).statusCode());
    HttpRequest events = HttpRequest.newBuilder(address.resolve("/api/events")).build();
    assertEquals(200, client.send(events, BodyHandlers.ofInputStream()).statusCode());
    process.destroy();
    Await.end(process);
    assertEquals(TERMINATED, process.exitValue());
    assertFalse(
        Files.exists(directory.resolve("data/chordlog.db-wal")), "the log was not folded in");
  }

  /** Persian: numbers are written with other digits there, of which SQL and protocols know none. */
  @Test
  void theLanguageOfTheComputerChangesNothing() throws Exception {
    List<String> persian = List.of("-Duser.language=fa", "-Duser.country=IR");
    Process process = started(persian, "--port", "0");
    String said = process.inputReader(StandardCharsets.UTF_8).readLine();
    assertTrue(said.matches("Chordlog is at http://127\\.0\\.0\\.1:[0-9]+/"), said);
    process.destroy();
    Await.end(process);
    Ran audit = Ran.command(List.of("audit", "--data", directory.resolve("data").toString()));
    assertEquals(ExitCode.WELL, audit.code(), audit.err());
  }

  @Test
  void logLinesAreJsonWhereAskedFor() throws Exception {
    Process process = serve("--port", "0", "--log-format", "json");
    JsonNode line = new ObjectMapper().readTree(process.errorReader().readLine());
    assertEquals("INFO", line.get("level").asText());
    assertTrue(line.get("formattedMessage").asText().contains("refuses"), line::toString);
    assertEquals("A", line.get("kvpList").findValue("station").asText());
    process.destroy();
    Await.end(process);
  }

  @Test
  void badInputEndsWithOneMessageAndCodeTwo() throws Exception {
    Files.writeString(config, STATION.replace("spanMm: 200", "spanMm: -200"));
    assertRefused("stations[0].bridge.spanMm", serve("--port", "0"));
    try (ServerSocket taken = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      Files.writeString(config, STATION);
      String said = assertRefused("port", serve("--port", String.valueOf(taken.getLocalPort())));
      assertFalse(said.contains("ERROR"), said);
    }
  }

  /** In this process, as the start that is refused is the same. */
  @Test
  void otherBadInputIsRefusedSoToo() throws Exception {
    assertRefusedHere("port", "--port", "70000");
    assertRefusedHere("log-format", "--port", "0", "--log-format", "prose");
    assertRefusedHere("--trusted-proxy", "--port", "0", "--trusted-proxy", "shop");
    Path unused = Files.writeString(directory.resolve("data"), "a file");
    assertRefusedHere("data", "--port", "0");
  }

  private void assertRefusedHere(String field, String... more) {
    Ran ran = Ran.command(words(), more);
    assertEquals(ExitCode.BAD_INPUT, ran.code(), ran.err());
    assertTrue(ran.err().contains(field), ran.err());
  }

  @Test
  void aLibraryThatCanNotBeUnpackedIsOneMessage() throws Exception {
    String nowhere = "-Dorg.sqlite.tmpdir=" + directory.resolve("nowhere");
    assertRefused("-Dorg.sqlite.tmpdir=DIR", started(List.of(nowhere), "--port", "0"));
  }

  private static String assertRefused(String field, Process process) throws Exception {
    String said = new String(process.getErrorStream().readAllBytes(), StandardCharsets.UTF_8);
    assertEquals(ExitCode.BAD_INPUT, process.waitFor(), said);
    assertTrue(said.contains(field), said);
    assertFalse(said.contains("\tat "), said);
    return said;
  }

  private Process serve(String... more) throws Exception {
    return started(List.of(), more);
  }

  private Process started(List<String> options, String... more) throws Exception {
    List<String> command = ServiceProcess.briefJar(options.toArray(String[]::new));
    command.addAll(words());
    command.addAll(List.of(more));
    return Children.start(new ProcessBuilder(command));
  }

  private List<String> words() {
    String data = directory.resolve("data").toString();
    return List.of("serve", "--data", data, "--config", config.toString());
  }
}
