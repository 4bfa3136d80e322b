package org.chordlog.simulator;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.IntStream;
import org.apache.commons.math3.stat.descriptive.DescriptiveStatistics;
import org.chordlog.measure.BadInput;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class ScenarioTest {
  private static final int PIECES = 200;

  private static DescriptiveStatistics radii(long seed, int from, int to) throws IOException {
    VirtualMachine machine = new VirtualMachine(ScenarioFile.read(ScenarioFile.DEMO), seed);
    double[] all =
        IntStream.range(0, PIECES)
            .mapToDouble(i -> machine.bend().get(0).centrelineRadiusMm())
            .toArray();
    return new DescriptiveStatistics(java.util.Arrays.copyOfRange(all, from - 1, to));
  }

  @Test
  void theFirstPiecesAreCapableAndNearTheTarget() throws IOException {
    DescriptiveStatistics pooled = new DescriptiveStatistics();
    for (long seed = 1; seed <= 50; seed++) {
      for (double radius : radii(seed, 1, 40).getValues()) {
        pooled.addValue(radius);
      }
    }
    assertEquals(1800, pooled.getMean(), 0.5);
    double cp = 24 / (6 * pooled.getStandardDeviation());
    assertTrue(cp > 1.1 && cp < 1.5, "Cp " + cp);
  }

  @Test
  void creepAndLotShowAndCorrectionsTakeThemBack() throws IOException {
    double start = radii(1, 1, 40).getMean();
    double crept = radii(1, 76, 85).getMean();
    double corrected = radii(1, 86, 120).getMean();
    double otherLot = radii(1, 121, 145).getMean();
    double correctedAgain = radii(1, 146, 200).getMean();
    assertTrue(crept - start > 3, crept + " after " + start);
    assertTrue(Math.abs(corrected - 1800) < 3, "" + corrected);
    assertTrue(otherLot - corrected > 4, otherLot + " after " + corrected);
    assertTrue(Math.abs(correctedAgain - 1800) < 3, "" + correctedAgain);
  }

  @ParameterizedTest
  @CsvSource({
    "wallMm: 3.2, 'wallMm: 3.2, colour: 1', job.tube.colour",
    "yieldMpa: 235, yieldMpa: -1, lots.0.yieldMpa",
    "targetMm: 1800, targetMm: wide, job.targetMm",
    "seed: 20260, '', seed"
  })
  void aWrongKeyOrValueIsNamed(String right, String wrong, String field) throws IOException {
    String yaml = Files.readString(Path.of("demo-data", ScenarioFile.DEMO + ".yaml"));
    assertTrue(yaml.contains(right));
    BadInput refusal =
        assertThrows(BadInput.class, () -> ScenarioFile.parse(yaml.replace(right, wrong)));
    assertEquals(field, refusal.faults().get(0).field());
  }
}
