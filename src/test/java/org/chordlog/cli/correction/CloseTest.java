package org.chordlog.cli.correction;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import org.chordlog.cli.Chordlog;
import org.chordlog.cli.common.ExitCode;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import picocli.CommandLine;

/** The command itself; its formulas are checked where they are. */
final class CloseTest {
  @TempDir private Path folder;

  private record Ran(int code, String out, String err) {}

  private static Ran run(String command) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    CommandLine line =
        Chordlog.commandLine().setOut(new PrintWriter(out)).setErr(new PrintWriter(err));
    int code = line.execute(command.split(" "));
    return new Ran(code, out.toString(), err.toString());
  }

  private static JsonNode json(String command) throws IOException {
    Ran ran = run(command + " --json");
    assertEquals(ExitCode.WELL, ran.code(), ran.err());
    return JsonMapper.builder().build().readTree(ran.out());
  }

  @Test
  void aRingByItsRadiusAndBack() throws IOException {
    Ran ran = run("close --target 1800 --radius 1801 --uncertainty 0.6");
    assertEquals(
        "Ring for 1800 mm bent to 1801.00 mm (± 1.20): open by 6.28 mm (± 7.54) along the arc,"
            + " 6.28 straight; kink 0.200°.",
        ran.out().strip());
    assertTrue(run("close --target 1800 --radius 1799").out().contains("ends overlap by 6.28 mm"));
    JsonNode gap = json("close --target 1800 --gap 75.3982237 --uncertainty 6.283185307");
    assertEquals(1812, gap.get("radiusMm").asDouble(), 1e-6);
    assertEquals(1, gap.get("radiusStandardUncertaintyMm").asDouble(), 1e-9);
    JsonNode straight = json("close --target 1800 --straight-gap -75.3926373");
    assertEquals(1788, straight.get("radiusMm").asDouble(), 1e-6);
  }

  @Test
  void anArcByItsRadiusAndBack() throws IOException {
    JsonNode arc = json("close --target 1800 --angle 90 --radius 1803");
    assertEquals("END_OFFSET", arc.get("checkBy").asText());
    assertEquals(2545.58441, arc.at("/features/0/targetMm").asDouble(), 1e-5);
    assertEquals(0.303492828, arc.at("/features/0/perMm").asDouble(), 1e-8);
    double rise = arc.at("/features/1/valueMm").asDouble();
    JsonNode back = json("close --target 1800 --angle 90 --rise " + rise);
    assertEquals(1803, back.get("radiusMm").asDouble(), 1e-6);
    JsonNode cut = json("close --target 1800 --angle 90 --cut-after --chord 2545.58441");
    assertEquals(1800, cut.get("radiusMm").asDouble(), 1e-4);
    JsonNode end = json("close --target 1800 --length 2827.43339 --end-offset 1.15143756");
    assertEquals(1801, end.get("radiusMm").asDouble(), 2e-3);
    String text = run("close --target 1800 --angle 90 --radius 1803 --uncertainty 1").out();
    assertTrue(text.startsWith("Arc of 90.0° about 1800 mm, developed length 2827.4 mm"), text);
    assertTrue(text.contains("Check it by the offset of one end"), text);
  }

  /** δκ = 1e-6 + 3e-6 cos(2πs/S − 0.5) + 2e-6 sin(6πs/S), as in the test of the formula. */
  @Test
  void anUnevenRing() throws IOException {
    StringBuilder command = new StringBuilder("close --target 1800 --radii");
    for (int i = 0; i < 8; i++) {
      double turned = 2 * Math.PI * (i + 0.5) / 8;
      double off = 1e-6 + 3e-6 * Math.cos(turned - 0.5) + 2e-6 * Math.sin(3 * turned);
      command.append(' ').append(1 / (1 / 1800.0 + off));
    }
    JsonNode ring = json(command.toString());
    assertEquals(-0.0113097336, Math.toRadians(ring.get("kinkDegrees").asDouble()), 1e-9);
    assertEquals(-6.44058696, ring.get("pastStartMm").asDouble(), 1e-7);
    assertEquals(-14.6398728, ring.get("insideMm").asDouble(), 1e-6);
    String text = run(command + " --uncertainty 0.5").out();
    assertTrue(text.contains("measured at 8 places, 1796.77 mm on average: its end"), text);
    assertTrue(text.contains("falls short of its start by 6.44 mm (± 2.72) and lies"), text);
    assertTrue(text.contains("14.64 mm (± 1.57) outside of it; kink \u22120.648°."), text);
  }

  /** What all radii have in common counts as with one radius: 2π for each mm. */
  @Test
  void twoPlacesTellTheMeanOfAnUnevenRing() throws IOException {
    String command = "close --target 1800 --radii 1801 1799 --common-uncertainty 0.5";
    JsonNode ring = json(command);
    assertEquals(Math.PI, ring.get("pastStartStandardUncertaintyMm").asDouble(), 1e-9);
    assertTrue(run(command).out().contains(" if it is even; kink"), run(command).out());
    assertTrue(run("close --target 1800 --radii 1801").err().contains("at least 2 values"));
  }

  @Test
  void inchesStayInches() {
    Ran ran = run("close --unit inch --target 70 --radius 70.5");
    assertTrue(ran.out().startsWith("Ring for 70 in bent to 70.5000 in"), ran.out());
  }

  @Test
  void piecesOfARing() throws IOException {
    String rows = "name,length,radius,uncertainty\na,2827.43339,1806,3\nb,2827.43339,1804,3\n";
    Path file = Files.writeString(folder.resolve("bent.csv"), rows + "c,2827.43339,1797,3\n");
    JsonNode left = json("close --bent " + file + " --left 2827.43339 --common-uncertainty 1.2");
    assertEquals(1793.06067, left.at("/rest/radiusMm").asDouble(), 1e-4);
    assertTrue(left.at("/rest/standardUncertaintyMm").asDouble() > 5);
    String text = run("close --bent " + file + " --left 2827.43339").out();
    assertTrue(text.startsWith("3 pieces leave 90.3"), text);
    String all = run("close --bent " + file).out();
    assertTrue(all.startsWith("3 pieces: gap of "), all);
  }

  /** It would be a piece as long as all others together. */
  @Test
  void aTotalBelowThePiecesIsNoPiece() throws IOException {
    String rows = "name,length,radius\na,2827,1800\nb,2827,1801\nTotal,5654,\n";
    Path file = Files.writeString(folder.resolve("bent.csv"), rows);
    String said = run("close --bent " + file).err();
    assertTrue(said.startsWith("line 4: Total, 5654 seems to sum up the other rows"), said);
  }

  @Test
  void whichPiecesToJoin() throws IOException {
    String rows = "length;radius\n2827,43;1794\n2827,43;1797\n2827,43;1803\n2827,43;1806\n";
    Path file = Files.writeString(folder.resolve("bent.csv"), rows + "2827,43;1820\n");
    JsonNode found = json("close --bent " + file + " --join 4");
    assertEquals(4, found.get("pieces").size());
    assertTrue(found.get("openingMm").asDouble() < 10);
    String text = run("close --bent " + file + " --join 4").out();
    assertTrue(text.contains(" in this order: ") && !text.contains("5,"), text);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "close --target 1800|--radius or a gap is missing",
        "close --target 1800 --angle 90|--radius or something measured on the arc is missing",
        "close --target 1800 --chord 5|--angle or --length of the arc is missing",
        "close --target 1800 --angle 400 --radius 1800|--angle: 400.0 is out of range; allowed: 0.0 to 360.0",
        "close --target 1800 --angle 90 --length 5 --radius 1|--angle: 90 is given beside",
        "close --target 1800 --angle 267.1 --rise 3060|says nothing of the radius",
        "close --target 1800 --angle 90 --chord 9000|--chord: 9000.0 is given by no radius near",
        "close --target 1800 --straight-gap 9999999|is not a gap of this ring",
        "close --target x --radius 1|--target: x is not a length",
        "close --radius 1800|Missing required argument",
        "close --unit inch --target 70 --angle 90 --chord 350|--chord: 350 in is given by no",
        "close --target 1,800 --radius 1801|decimal comma or thousands",
        "close --bent none.csv|does not exist"
      })
  void badInputIsOneSentence(String command, String why) {
    Ran ran = run(command);
    assertEquals(ExitCode.BAD_INPUT, ran.code(), ran.out());
    assertTrue(ran.err().contains(why), ran.err());
    assertFalse(ran.err().contains("\tat "), ran.err());
  }
}
