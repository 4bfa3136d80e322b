package org.chordlog.simulator;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.chordlog.measure.BadInput;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

final class LineTest {
  @TempDir private Path folder;

  private static String yaml() throws IOException {
    return Files.readString(Path.of("demo-data", ScenarioFile.LINE + ".yaml"));
  }

  private static LineScenario line(String... replaced) throws IOException {
    String yaml = yaml();
    for (int i = 0; i < replaced.length; i += 2) {
      assertTrue(yaml.contains(replaced[i]), replaced[i]);
      yaml = yaml.replace(replaced[i], replaced[i + 1]);
    }
    return ScenarioFile.parseLine(yaml);
  }

  @Test
  void theOneThatComesWithTheProgramIsRead() throws IOException {
    assertTrue(ScenarioFile.isLine(ScenarioFile.LINE));
    assertEquals(6000, ScenarioFile.readLine(ScenarioFile.LINE).line().piece().lengthMm());
    assertTrue(!ScenarioFile.isLine(ScenarioFile.DEMO));
  }

  @ParameterizedTest
  @CsvSource({
    "mmPerSecond: 100, 'mmPerSecond: 100, colour: 1', line.feed",
    "mmPerSecond: 100, mmPerSecond: 0, line.feed.mmPerSecond",
    "lengthMm: 6000, lengthMm: 600, line.piece.leadMm.to",
    "diameterMm: 220, diameterMm: 2, line.rollers.2.diameterMm",
    "mmPerCount: 0.1, mmPerCount: 0, line.encoder.mmPerCount",
    "spanMm: 200, spanMm: 201, bridge.spanMm",
    "seed: 20261, '', seed",
    "'faults: []', 'faults: [{atSeconds: 3, fault: fly 3}]', faults.0.fault"
  })
  void aWrongKeyOrValueIsNamed(String right, String wrong, String field) throws IOException {
    String yaml = yaml();
    assertTrue(yaml.contains(right), right);
    BadInput refusal =
        assertThrows(BadInput.class, () -> ScenarioFile.parseLine(yaml.replace(right, wrong)));
    assertTrue(refusal.faults().get(0).field().startsWith(field), refusal.faults().toString());
  }

  /** What the bridge shows by its second sum is the triangle summed over the curvature. */
  @Test
  void theTriangleOfTheStrip() throws IOException {
    LineStrip strip = new LineStrip(line(), 1, new Random(3));
    LineTruth truth = strip.pieces().get(0).at(0, 1);
    for (double place : new double[] {100, 260, 700, 3000, 5800}) {
      double sum = 0;
      for (int j = -100; j <= 100; j++) {
        sum += (100 - Math.abs(j)) * truth.curvaturePerMm(place + j) / 1e4;
      }
      assertEquals(sum, truth.shownPerMm(place), 1e-12, "at " + place);
    }
  }

  @Test
  void aRollerMakesItsRippleWithItsSlip() throws IOException {
    LineScenario scenario =
        line(
            "amplitudePercent: 0.2, phaseDegrees: -1",
            "amplitudePercent: 2, phaseDegrees: 0",
            "wanderPercent: 0.1",
            "wanderPercent: 0");
    LineStrip strip = new LineStrip(scenario, 1, new Random(3));
    LineTruth truth = strip.pieces().get(0).at(0, 1);
    double wave = strip.wavelengthMm(scenario.line().rollers().get(0)) * 1.005;
    assertEquals(Math.PI * 180 * 1.005, wave, 1e-9);
    double level = (truth.curvaturePerMm(4 * wave) + truth.curvaturePerMm(4.5 * wave)) / 2;
    assertEquals(1.02, truth.curvaturePerMm(4 * wave) / level, 1e-4);
    assertEquals(1.02, truth.curvaturePerMm(5 * wave) / level, 1e-4);
  }

  @Test
  void theSameSeedGivesTheSameStream() throws IOException {
    LineStream one = new LineStream(line(), LineErrors.NONE, 7);
    LineStream two = new LineStream(line(), LineErrors.NONE, 7);
    for (int i = 0; i < 5000; i++) {
      one.next();
      two.next();
      assertEquals(one.depthNm(), two.depthNm());
      assertEquals(one.counts(), two.counts());
    }
  }

  @Test
  void stopsJogsAndPassesMoveTheStrip() {
    LineMotion way = new LineMotion(0, -100);
    way.go(500, 100, 1);
    way.rest(3, 1);
    way.go(1000, 100, 1);
    assertEquals(500, way.placeMm(7), 1e-9);
    way.interrupt(10, 50, 100, 1);
    assertEquals(600, way.placeMm(10), 1e-9);
    assertEquals(550, way.placeMm(10.5), 1e-9);
    assertEquals(550, way.placeMm(11.4), 1e-9);
    assertEquals(600, way.placeMm(12), 1e-9);
    assertEquals(1000, way.placeMm(16), 1e-9);
    assertEquals(16, way.endSeconds(), 1e-9);
    assertEquals(3, way.firstAt(200), 1e-9);
  }

  /** An autoregression with the poles of a damped oscillation has the variance it is scaled to. */
  @ParameterizedTest
  @ValueSource(doubles = {5, 20, 100, 500})
  void vibrationHasItsStandardDeviation(double rate) {
    LineVibration vibration =
        new LineVibration(new LineScenario.Vibration(12, 0.05, 2), rate, new Random(5));
    int count = 200_000;
    double sum = 0;
    for (int i = 0; i < count; i++) {
      double mm = vibration.nextMm();
      sum += mm * mm;
    }
    assertEquals(0.002, Math.sqrt(sum / count), 0.0002);
  }

  @Test
  void theTruthIsWrittenWithTheProfile() throws IOException {
    Path file = folder.resolve("truth.csv");
    try (LineTruthFile truth = LineTruthFile.create(file)) {
      new LineStream(line(), LineErrors.NONE, 1).truths().forEach(truth);
    }
    List<String> pieces = Files.readAllLines(file);
    assertEquals(2, pieces.size());
    assertEquals(pieces.get(0).split(",", -1).length, pieces.get(1).split(",", -1).length);
    assertTrue(pieces.get(1).contains("entry roller 0.2000 %"), pieces.get(1));
    List<String> profile = Files.readAllLines(Path.of(file + ".profile.csv"));
    assertEquals(1 + 1201, profile.size());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"stop 5", "jog 200", "swing 3", "length dead", "length forward", "noise 1"})
  void faultsThatAreTyped(String typed) {
    assertTrue(LineFault.parse(typed).toString().length() > 2);
  }

  @ParameterizedTest
  @ValueSource(strings = {"stop", "stop long", "jog -1", "length gone", "fly 3", ""})
  void othersAreRefused(String typed) {
    List<String> allowed = new ArrayList<>();
    BadInput refusal = assertThrows(BadInput.class, () -> LineFault.parse(typed));
    refusal.faults().forEach(fault -> allowed.add(fault.allowed().toString()));
    assertTrue(allowed.stream().noneMatch(String::isBlank));
  }
}
