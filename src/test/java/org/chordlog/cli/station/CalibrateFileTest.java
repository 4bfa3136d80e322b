package org.chordlog.cli.station;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.chordlog.cli.common.ExitCode;
import org.chordlog.harness.Ran;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Readings on masters from a file, without a service. */
final class CalibrateFileTest {
  /** Exact depths on a span of 200.06 mm with the zero 5 µm off. */
  private static final String MASTERS = masters();

  @TempDir private Path folder;

  private static String masters() {
    return masters(1);
  }

  private static String masters(double unitMm) {
    StringBuilder csv = new StringBuilder("master;radius;depth;uncertainty;scatter;samples\n");
    double half = 100.03;
    for (double radius : new double[] {500, 800, -1000, 1500}) {
      double depth =
          half * half / (radius + Math.copySign(Math.sqrt(radius * radius - half * half), radius));
      csv.append(
          "M%.0f;%.9f;%.9f;%.9f;%.9f;10%n"
              .formatted(
                  radius,
                  radius / unitMm,
                  (depth + 0.005) / unitMm,
                  0.05 / unitMm,
                  0.0005 / unitMm));
    }
    return csv.toString().replace('.', ',');
  }

  private Ran fit(String content, String... options) throws IOException {
    Path file = Files.writeString(folder.resolve("masters.csv"), content);
    return Ran.command(List.of("calibrate", "--csv", file.toString()), options);
  }

  private static JsonNode json(Ran ran) throws IOException {
    assertEquals(ExitCode.WELL, ran.code(), ran.err());
    return JsonMapper.builder().build().readTree(ran.out());
  }

  @Test
  void spanAndZeroAreFoundAgain() throws IOException {
    JsonNode json = json(fit(MASTERS, "--span", "200", "--json"));
    JsonNode span = json.get("figures").get(0);
    assertEquals("span", span.get("name").asText());
    assertEquals(200.06, span.get("value").asDouble(), 1e-4);
    assertTrue(span.get("lower").asDouble() < 200.06 && span.get("upper").asDouble() > 200.06);
    assertEquals(0.005, json.get("figures").get(1).get("value").asDouble(), 1e-5);
    assertEquals(4, json.get("fit").get("residualsMm").size());
    assertTrue(json.get("fit").get("fits").asBoolean());
  }

  @Test
  void aFileInInchesGivesTheSameSpanAndSpeaksOfInches() throws IOException {
    JsonNode json = json(fit(masters(25.4), "--span", "7.874015748", "--unit", "inch", "--json"));
    assertEquals(200.06, json.get("figures").get(0).get("value").asDouble(), 1e-4);
    String text = fit(masters(25.4), "--span", "7.874015748", "--unit", "inch").out();
    assertTrue(text.contains("span 7.876"), text);
    assertFalse(text.contains(" mm"), text);
  }

  @Test
  void itSaysWhatTheCalibrationDoesAndWhichMasterWouldHelp() throws IOException {
    String two = MASTERS.lines().limit(3).reduce("", (a, b) -> a + b + "\n");
    Ran ran = fit(two, "--span", "200", "--span-uncertainty", "0.02", "--at", "1000");
    assertTrue(ran.out().contains("M500: depth"), ran.out());
    assertTrue(ran.out().contains("raises the standard uncertainty"), ran.out());
    assertTrue(ran.out().contains("One more master, "), ran.out());
  }

  /**
   * GUM (JCGM 100:2008) H.3, Table H.6, calibration of a thermometer (from memory): y1 −0.1712
   * (0.0029) at 20 °C, y2 0.00218 (0.00067), r −0.930, s 0.0035.
   */
  @Test
  void thermometerOfTheGum() throws IOException {
    String csv =
        """
        x,y
        21.521,-0.171
        22.012,-0.169
        22.512,-0.166
        23.003,-0.159
        23.507,-0.164
        23.999,-0.165
        24.513,-0.156
        25.002,-0.157
        25.503,-0.159
        26.010,-0.161
        26.511,-0.160
        """;
    JsonNode line = json(fit(csv, "--line", "--line-at", "20", "--json"));
    assertEquals(-0.1712, line.get("value").asDouble(), 5.1e-5);
    assertEquals(0.0029, line.get("valueUncertainty").asDouble(), 5.1e-5);
    assertEquals(0.00218, line.get("slope").asDouble(), 5.1e-6);
    assertEquals(0.00067, line.get("slopeUncertainty").asDouble(), 5.1e-6);
    assertEquals(-0.930, line.get("correlation").asDouble(), 5.1e-4);
    assertEquals(0.0035, line.get("residualDeviation").asDouble(), 5.1e-5);
    assertTrue(fit(csv, "--line").out().contains("9 degrees of freedom"));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "radius,depth/800,x | --span 200 | row 2, column depth: x is not a length",
        "radius,depth/800,-6 | --span 200 | row 2, column depth: -6.0 has not the radius's sign",
        "radius/800 | --span 200 | column depth: depth is not a column",
        "radius,depth/800,6.27 | --json | --span: nothing was given",
        "radius,depth/800,9 | --span 200 | --span: 239",
        "x,y/1,2/1,3/1,4 | --line | reference: 1.0 is the same in every row",
        "radius,depth,samples/800,6.27,0 | --span 200 | row 2, column samples: 0.0 is out of range"
      })
  void badInputIsOneSentence(String lines, String options, String start) throws IOException {
    Ran ran = fit(lines.strip().replace("/", "\n"), options.strip().split(" ", -1));
    assertEquals(ExitCode.BAD_INPUT, ran.code(), ran.out());
    assertTrue(ran.err().startsWith(start.strip()), ran.err());
    assertEquals(1, ran.err().strip().lines().count(), ran.err());
  }

  @Test
  void withoutAFileItNeedsAStation() {
    Ran ran = Ran.command(List.of("calibrate"));
    assertEquals(ExitCode.BAD_INPUT, ran.code());
    assertTrue(ran.err().startsWith("--station: nothing was given"), ran.err());
  }
}
