package org.chordlog.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import org.chordlog.Await;
import org.chordlog.EvenReads;
import org.chordlog.WaitingTest;
import org.chordlog.cli.common.ExitCode;
import org.chordlog.cli.service.Service;
import org.chordlog.harness.Ran;
import org.chordlog.simulator.PseudoTerminal;
import org.chordlog.station.StationFile;
import org.chordlog.station.StationKeeper;
import org.chordlog.store.StoreSettings;
import org.chordlog.web.http.WebSettings;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.io.TempDir;

/** Zero, calibration, check, trigger and span advice by command on a running service. */
@Tag("slow")
final class GaugeCommandsTest {
  private static final double FREE_AIR_MM = -6;
  private static final double TRUE_HALF_SPAN_MM = 100.1;

  @TempDir private Path folder;
  private PseudoTerminal terminal;
  private Thread indicator;
  private Service service;
  private volatile double atMm = FREE_AIR_MM;
  private volatile boolean stopping;

  @BeforeEach
  void start() throws Exception {
    terminal = PseudoTerminal.open();
    terminal.publish(folder.resolve("port"));
    indicator = new Thread(this::send, "indicator");
    indicator.start();
    String file =
        """
        stations:
          - name: A
            machine: three-roll bender
            link: {kind: serial, port: %s}
            profile: signed-mm-lines
            direction: counts_up
            indicator: {resolutionMm: 0.001, permissibleErrorMm: 0.002, travelMm: 12.7}
            capture: {mode: settled, freeAirMm: -6}
            bridge: {name: long, spanMm: 200, spanUncertaintyMm: 0.02, footRadiusMm: 0}
        """
            .formatted(folder.resolve("port"));
    service =
        Service.start(
            folder.resolve("data"),
            StoreSettings.USUAL,
            StationFile.parse(file, "test"),
            WebSettings.onLoopback(0),
            StationKeeper.forThisRun());
    Await.until(() -> samples() > 30);
  }

  @AfterEach
  void stop() throws Exception {
    service.close();
    stopping = true;
    indicator.join();
    terminal.close();
  }

  private void send() {
    try {
      while (!stopping) {
        String line = String.format(Locale.ROOT, "%+07.3f\r\n", atMm);
        terminal.write(line.getBytes(StandardCharsets.US_ASCII));
        LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(5));
      }
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
  }

  private long samples() {
    return service.stations().status("A").counts().samples();
  }

  private void hold(double mm, int values) throws Exception {
    atMm = mm;
    EvenReads.await(this::samples, values);
  }

  private void standOn(double mm) throws Exception {
    hold(FREE_AIR_MM, 30);
    hold(mm, 280);
  }

  private static double depthMm(double radiusMm) {
    return radiusMm - Math.sqrt(radiusMm * radiusMm - TRUE_HALF_SPAN_MM * TRUE_HALF_SPAN_MM);
  }

  private Ran run(String line) {
    return runAt("http://127.0.0.1:" + service.port(), line);
  }

  private static Ran runAt(String address, String line) {
    return Ran.line(line + " --station A --by tester --service " + address);
  }

  private JsonNode post(String path, String body) throws Exception {
    HttpRequest request =
        HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + service.port() + path))
            .header("Chordlog-By", "tester")
            .header("Content-Type", "application/json")
            .POST(BodyPublishers.ofString(body))
            .build();
    String answer = HttpClient.newHttpClient().send(request, BodyHandlers.ofString()).body();
    return new ObjectMapper().readTree(answer);
  }

  private void master(String name, double radiusMm) throws Exception {
    String body =
        """
        {"name": "%s", "face": "OUTER", "radiusMm": %s, "expandedUncertaintyMm": 0.02}
        """;
    JsonNode kept = post("/api/masters", body.formatted(name, radiusMm));
    assertTrue(kept.path("id").asLong() > 0, kept.toString());
  }

  private void job() throws Exception {
    JsonNode job =
        post(
            "/api/jobs",
            """
            {"name": "hoops", "station": "A", "machine": "three-roll bender",
             "section": {"kind": "ROUND_TUBE", "outsideDiameterMm": 60.3, "wallMm": 3.2},
             "measuredFace": "OUTER", "specification": {"face": "OUTER", "targetMm": 1000},
             "plan": {"positions": ["middle"], "subgroups": "INDIVIDUAL"}}
            """);
    long id = job.path("id").asLong();
    assertTrue(id > 0, job.toString());
    post("/api/stations/A/job", "{\"jobId\": " + id + "}");
  }

  @WaitingTest
  void zeroIsRefusedInFreeAirAndTakenOnAFlat() throws Exception {
    Ran refused = run("zero");
    assertEquals(ExitCode.BAD_INPUT, refused.code(), refused.toString());
    assertTrue(refused.err().contains("free air"), refused.err());
    standOn(0.25);
    Ran taken = run("zero");
    assertEquals(ExitCode.WELL, taken.code(), taken.toString());
    assertTrue(taken.out().startsWith("Zero 0.25 mm"), taken.out());
    String inches = run("zero --unit inch").out();
    assertTrue(inches.startsWith("Zero 0.0098") && inches.contains(" in, "), inches);
    assertFalse(inches.contains("mm"), inches);
  }

  @WaitingTest
  void calibratedByTwoMastersThenCheckedAndReadingsInDoubtAreListed() throws Exception {
    master("R1000", 1_000);
    master("R1500", 1_500);
    job();
    standOn(0);
    assertEquals(ExitCode.WELL, run("zero").code());
    standOn(depthMm(1_000));
    Ran failed = run("check --master R1000 --limit 0.5");
    assertEquals(ExitCode.FAULT, failed.code(), failed.toString());
    assertTrue(failed.out().startsWith("failed: 99"), failed.out());
    Ran inches = run("check --master R1000 --limit 0.02 --unit inch");
    assertTrue(inches.out().startsWith("failed: 39."), inches.out());
    assertTrue(inches.out().contains("on a master of 39.37"), inches.out());
    assertTrue(inches.out().contains("allowed ± 0.02 in"), inches.out());
    Ran mixed = run("check --master R1000 --limit 0.5mm --unit inch");
    assertEquals(ExitCode.BAD_INPUT, mixed.code(), mixed.toString());
    hold(FREE_AIR_MM, 30);
    hold(depthMm(1_200), 200);
    Await.until(() -> run("check").out().contains("Readings in doubt: 1"));
    assertEquals(ExitCode.FAULT, run("check").code());
    assertTrue(run("calibrate").out().startsWith("No master has been read yet"));
    for (int radius : new int[] {1_000, 1_500}) {
      standOn(depthMm(radius));
      Ran read = run("calibrate --master R" + radius);
      assertEquals(ExitCode.WELL, read.code(), read.toString());
    }
    assertTrue(run("calibrate").out().contains("residual"));
    assertFalse(run("calibrate --unit inch").out().contains(" mm"));
    Ran kept = run("calibrate --keep-until 1.2.2099");
    assertTrue(kept.out().contains("stored: span 200."), kept.toString());
    assertTrue(kept.out().contains("due 2099-02-01 00:00 "), kept.toString());
    standOn(depthMm(1_000));
    Ran passed = run("check --master R1000 --limit 0.5 --json");
    JsonNode json = new ObjectMapper().readTree(passed.out());
    assertTrue(json.at("/check/passed").asBoolean(), passed.toString());
    int doubtful = json.at("/readingsInDoubt").asInt();
    assertEquals(1, doubtful, "those before the calibration stay so: " + passed);
    assertEquals(ExitCode.FAULT, passed.code());
  }

  @WaitingTest
  void refusalsAreToldWithoutAStackTrace() {
    Ran refused = run("trigger");
    assertEquals(ExitCode.FAULT, refused.code());
    assertTrue(refused.out().startsWith("Not taken: "), refused.toString());
    Ran unknown = run("check --master 7 --limit 1");
    assertEquals(ExitCode.BAD_INPUT, unknown.code());
    assertTrue(unknown.err().contains("--master: 7 is not known"), unknown.err());
    Ran past = run("calibrate --keep-until 2001-01-01T00:00:00Z");
    assertEquals(ExitCode.BAD_INPUT, past.code(), past.toString());
    Ran slashes = run("calibrate --keep-until 01/02/2099");
    assertTrue(slashes.err().startsWith("--keep-until: 01/02/2099 could be day"), slashes.err());
    Ran mistyped = Ran.line("zero --station a --service http://127.0.0.1:" + service.port());
    assertEquals(ExitCode.BAD_INPUT, mistyped.code(), mistyped.toString());
    String names = "--station: a is not a station of this service; allowed: A";
    assertEquals(names, mistyped.err().strip());
    Ran nobody = runAt("http://127.0.0.1:1", "zero");
    assertEquals(ExitCode.FAULT, nobody.code());
    assertTrue(nobody.err().contains("No service answers"), nobody.err());
    assertEquals(ExitCode.BAD_INPUT, runAt("ftp://127.0.0.1", "zero").code());
  }

  @WaitingTest
  void aReadingOnRequestIsToldWithWhatItIsSureOf() throws Exception {
    job();
    standOn(0);
    assertEquals(ExitCode.WELL, run("zero").code());
    standOn(depthMm(1_000));
    String told = run("trigger").out();
    assertTrue(
        told.matches("Piece \\d, middle: depth 5\\.\\d{3} mm, radius .* mm, between .* and .*\\R"),
        told);
    String help = Ran.line("trigger --help").out();
    assertTrue(help.contains("your user name"), "not who built the manual page: " + help);
  }

  @WaitingTest
  void spanAdviceWithTheBridgesKept() {
    Ran ran = Ran.line("span --radius 1800 --tolerance 12 --data " + folder.resolve("data"));
    assertEquals(ExitCode.WELL, ran.code(), ran.out());
    assertTrue(ran.out().contains("long; the best of these"), ran.out());
    assertEquals(3, ran.out().lines().count(), ran.out());
  }
}
