package org.chordlog.station;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.BufferedReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.chordlog.Await;
import org.chordlog.WaitingTest;
import org.chordlog.capture.CaptureOutcome.Reason;
import org.chordlog.harness.Children;
import org.chordlog.harness.Ran;
import org.chordlog.measure.CaptureMode;
import org.chordlog.measure.DecideBy;
import org.chordlog.measure.Incident;
import org.chordlog.measure.Job;
import org.chordlog.measure.PassedProfile;
import org.chordlog.measure.RadiusEstimate;
import org.chordlog.measure.Reading;
import org.chordlog.profile.PieceOutcome;
import org.chordlog.profile.Profile;
import org.chordlog.profile.StoredPiece;
import org.chordlog.radius.RadiusModel;
import org.chordlog.simulator.LineTruth;
import org.chordlog.simulator.PseudoTerminal;
import org.chordlog.store.Checkpoints.Slot;
import org.chordlog.store.Store;
import org.chordlog.store.open.Stores;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.io.TempDir;

/** A section that runs through a gauge, sent by a real device; and a kill in the middle of it. */
@Tag("slow")
final class LineOverDeviceTest {
  /** From the outer face of a tube of 60.3 mm to its centreline. */
  private static final double HALF_TUBE_MM = 30.15;

  @TempDir private Path directory;
  private final Heard heard = new Heard();

  /** What became of the frames that were sent, for a difference that is not explained otherwise. */
  private String counts = "";

  private Stations serve(Store store, Path port) {
    Stations stations = new Stations(store, StationClock.system(), 1);
    stations.subscribe(heard::add);
    StationFile.parse(LineRig.yaml(port, LineRig.byWheel()), "test").forEach(stations::add);
    return stations;
  }

  private void awaitReadings(int count) throws Exception {
    Await.until(
        () -> heard.taken().size() >= count,
        () -> heard.taken().size() + " taken, " + heard.refused());
  }

  /** A busy machine may be behind when the last of the pieces is taken. */
  private static void awaitAllRead(Stations stations, LineRig rig) throws Exception {
    int sent = rig.rows.size() - 1;
    Await.until(() -> read(stations) == sent, () -> read(stations) + " of " + sent);
  }

  /** Frames, each of which has a sample of the depth and one of the length. */
  private static long read(Stations stations) {
    StationStatus.Counts counts = stations.status(LineRig.STATION).counts();
    return counts.samples() / 2 + counts.damagedFrames();
  }

  @WaitingTest
  void eachPieceThatRunsThroughIsAReadingOfTheJobWithItsProfile() throws Exception {
    LineRig rig;
    try (PseudoTerminal terminal = PseudoTerminal.open();
        Store store = Stores.open(directory.resolve("data"))) {
      terminal.publish(directory.resolve("port"));
      rig = new LineRig(terminal, LineRig.scenario(), 7);
      Job job = LineRig.startJob(store, DecideBy.BOTH);
      try (Stations stations = serve(store, directory.resolve("port"))) {
        Await.until(() -> stations.status(LineRig.STATION).link() == StationStatus.LinkState.OPEN);
        rig.runUntil(280);
        awaitReadings(4);
        assertEquals(List.of(), heard.refused());
        awaitAllRead(stations, rig);
        counts = rig.rows.size() - 1 + " frames sent; " + stations.status(LineRig.STATION).counts();
      }
      assertEquals(List.of(Reason.GAP), heard.refused(), "the fifth was under way at the stop");
      List<Reading> readings = store.readings().ofJob(job.id(), 0, 10);
      assertEquals(heard.taken(), readings);
      for (int i = 0; i < readings.size(); i++) {
        check(store, readings.get(i), rig.stream.truths().get(i), i + 1);
      }
    }
    sameByTheCommand(rig);
    Ran ran = Ran.command("recompute", "--data", directory.resolve("data").toString());
    assertEquals("4 readings recomputed, 0 differ", ran.out().strip(), ran::err);
    Ran audit = Ran.command("audit", "--data", directory.resolve("data").toString());
    assertEquals(0, audit.code(), audit::out);
  }

  /**
   * The command makes of the same stream what the service made of it. How far from its ends a piece
   * is looked at follows the feed, which the service tells by the clock: twice the feed moves the
   * radius by 0.004 mm, four times by 0.011 mm.
   */
  private void sameByTheCommand(LineRig rig) throws Exception {
    Path file = directory.resolve("stream.csv");
    Files.write(file, rig.rows);
    String options =
        " --span 200 --span-uncertainty 0.02 --resolution 0.001 --permissible-error 0.003"
            + " --travel 12.5 --section tube:60.3x3.2 --specified-face centreline"
            + " --mm-per-count 0.1 --lower 1788 --upper 1812 --by both --json";
    Ran ran = Ran.command(("profile " + file + options).split(" ", -1));
    JsonNode pieces = new ObjectMapper().readTree(ran.out()).get("pieces");
    List<Reading> readings = heard.taken();
    for (int i = 0; i < readings.size(); i++) {
      RadiusEstimate by = readings.get(i).radius();
      JsonNode piece = pieces.get(i);
      double radius = Objects.requireNonNull(by.radiusMm());
      assertEquals(radius, piece.get("radiusMm").asDouble(), 0.02, () -> piece + "; " + counts);
      assertEquals(
          by.lowerMm(), piece.get("lowerMm").asDouble(), 0.02, "the zero's scatter is unknown");
    }
  }

  private static void check(Store store, Reading reading, LineTruth truth, int piece) {
    assertEquals(piece, reading.piece());
    assertEquals(CaptureMode.PASSING, reading.captured().mode());
    double mean = truth.meanShownPerMm(truth.idealFromMm(), truth.idealToMm());
    double radius = 1 / mean - HALF_TUBE_MM;
    double upper = Objects.requireNonNull(reading.radius().upperMm());
    assertTrue(reading.radius().lowerMm() < radius && radius < upper, () -> radius + " " + reading);
    List<PassedProfile> profiles = store.readings().profiles(reading.id());
    assertEquals(1, profiles.size());
    Profile profile = Profile.unpacked(profiles.get(0).packed());
    assertEquals(truth.lengthMm(), profile.facts().touchNm() / 1e6, 40);
    assertTrue(profiles.get(0).packed().length <= 3 * profile.bins());
    RadiusModel model = RadiusModel.of(store.readings().setUp(reading.setUpId()).orElseThrow());
    Job job = store.jobs().find(reading.jobId()).orElseThrow();
    PieceOutcome again = StoredPiece.evaluated(profiles, model, job.specification()).outcome();
    var result = ((PieceOutcome.Measured) again).result();
    assertEquals(reading.radius(), result.mean().radius());
    assertEquals(reading.decision(), result.inside().decision());
    assertEquals(reading.depthNm(), result.mean().depthNm());
  }

  /** What ran through before is stored; the piece under way is lost, and the next start says so. */
  @WaitingTest
  void aKillInTheMiddleOfAPieceLosesThatPieceAloneAndSaysSo() throws Exception {
    Path data = directory.resolve("data");
    Path port = directory.resolve("port");
    try (PseudoTerminal terminal = PseudoTerminal.open()) {
      terminal.publish(port);
      Job job;
      try (Store store = Stores.open(data)) {
        job = LineRig.startJob(store, DecideBy.MEAN);
      }
      LineRig rig = new LineRig(terminal, LineRig.scenario(), 8);
      killInTheMiddle(rig, data, port);
      try (Store store = Stores.open(data)) {
        assertEquals(1, store.readings().ofJob(job.id(), 0, 10).size());
        try (Stations stations = serve(store, port)) {
          Await.until(
              () -> stations.status(LineRig.STATION).link() == StationStatus.LinkState.OPEN);
          Await.until(() -> incidents(store).contains(Incident.Kind.PIECE_INTERRUPTED));
          assertEquals(List.of(Reason.GAP), heard.refused());
          rig.runUntil(rig.stream.truths().get(1).leftSeconds() + 4);
          rig.runUntil(rig.stream.truths().get(2).leftSeconds() + 5);
          awaitReadings(1);
        }
        List<Reading> readings = store.readings().ofJob(job.id(), 0, 10);
        assertEquals(List.of(1, 2), readings.stream().map(Reading::piece).toList());
        assertEquals(
            1,
            incidents(store).stream()
                .filter(kind -> kind == Incident.Kind.PIECE_INTERRUPTED)
                .count());
      }
    }
  }

  private static List<Incident.Kind> incidents(Store store) {
    return store.incidents().ofStation(LineRig.STATION, Long.MAX_VALUE, 10).stream()
        .map(Incident::kind)
        .toList();
  }

  private void killInTheMiddle(LineRig rig, Path data, Path port) throws Exception {
    Path file = directory.resolve("stations.yaml");
    Files.writeString(file, LineRig.yaml(port, LineRig.byWheel()));
    Process service = service(data, file);
    try (BufferedReader out = service.inputReader(StandardCharsets.UTF_8)) {
      rig.awaitListener();
      rig.runUntil(rig.stream.truths().get(0).leftSeconds() + 5);
      List<String> said = new ArrayList<>(List.of(out.readLine(), out.readLine()));
      assertTrue(said.contains("taken 1"), said::toString);
      rig.runUntil(rig.stream.truths().get(1).beganSeconds() + 30);
      assertEquals("running", out.readLine());
      Await.until(() -> noted(data));
      service.toHandle().destroyForcibly();
      Await.end(service);
      assertEquals(128 + 9, service.exitValue());
    }
  }

  /** The mark that a piece is under way is written in the background. */
  private static boolean noted(Path data) {
    try (Store store = Stores.openForReading(data)) {
      return store
          .checkpoints()
          .find(new Slot("passing/" + LineRig.STATION, 0, 0))
          .filter(state -> state.length > 0)
          .isPresent();
    }
  }

  private static Process service(Path data, Path file) throws Exception {
    return Children.start(
        Children.program(LineServiceProcess.class, "128m", data, file)
            .redirectError(ProcessBuilder.Redirect.INHERIT));
  }
}
