package org.chordlog.cli.correction;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.chordlog.cli.common.ExitCode;
import org.junit.jupiter.api.Test;

/** The command over a file of pieces. */
final class AdviseFileTest extends AdviseRuns {

  private Ran file(String content, String options) throws IOException {
    Path file = Files.writeString(folder.resolve("pieces.csv"), content);
    return run("advise " + file + " --target 1800 --tolerance 12 " + options);
  }

  private static final String ROWS =
      """
      piece;position;radius;lot;before;after;setUp
      1;start;1784;A;;;x
      1;end;1783,5;A;;;
      2;start;1785;A;;;
      2;end;1784,2;A;;;
      3;start;1799;A;12,4;12,2;
      3;end;1800;A;;;
      ;;;B;;;
      4;start;flat;B;;;
      """;

  @Test
  void aFileAsText() throws IOException {
    Ran ran = file(ROWS, "--gain -81 --scale dial --scale-unit mm");
    assertEquals(ExitCode.WELL, ran.code(), ran.err());
    assertTrue(ran.out().get(0).contains("piece 1     CORRECT"), ran.out().get(0));
    assertTrue(ran.out().get(2).contains("LEAVE"), ran.out().get(2));
    assertTrue(ran.out().get(3).contains("New lot: measure its first piece."));
    assertTrue(ran.out().get(4).contains("MEASURE_AGAIN"), ran.out().get(4));
    assertTrue(
        ran.out().get(5).startsWith("On the dial, one unit (mm) changes the radius by \u2212"));
    assertTrue(ran.out().get(6).contains("drive locked out"));
  }

  @Test
  void aSummaryBelowThePiecesIsLeftOutAndTold() throws IOException {
    Ran ran = file("piece;radius\n1;1803\n2;1804\nMean;1950\n;1960\n", "--uncertainty 0.3");
    assertEquals(ExitCode.WELL, ran.code(), ran.err());
    assertEquals(
        List.of(
            "row 4: sums up others, so it does not count (--all-rows takes it)",
            "row 5: sums up others, so it does not count (--all-rows takes it)"),
        ran.err().lines().toList());
    assertFalse(String.join("", ran.out()).contains("piece 3"), ran.out().toString());
  }

  /**
   * As a spreadsheet saves it: headings in capitals, a boolean in each row, empty rows at the end.
   */
  @Test
  void aFileThatASpreadsheetSavedIsReadLikeTheOther() throws IOException {
    String saved =
        ROWS.replace(
                "piece;position;radius;lot;before;after;setUp",
                "Piece;Position;RADIUS;Lot;Before;After;SETUP")
            .replaceAll("(?m);$", ";FALSE")
            .replace(";x\n", ";TRUE\n");
    Ran plain = file(ROWS, "--gain -81");
    Ran ran = file(saved + ";;;;;;\n;;;;;;\n", "--gain -81");
    assertEquals(ExitCode.WELL, ran.code(), ran.err());
    assertEquals(plain.out(), ran.out());
  }

  @Test
  void aReadingThatAnExportSaysIsExcludedDoesNotCount() throws IOException {
    String rows = "piece;radius;excluded_reason\n1;1784;\n1;1950;slipped\n2;1785;\n";
    Ran ran = file(rows, "--gain -81");
    assertEquals(ExitCode.WELL, ran.code());
    assertEquals(
        file(rows.replace("1;1950;slipped\n", ""), "--gain -81").out().size(), ran.out().size());
    assertTrue(ran.out().get(1).contains("CORRECT"), ran.out().get(1));
    assertEquals("row 3: excluded, so it does not count", ran.err().strip());
  }

  private static final String LOTS =
      """
      radius,lot,yieldMpa
      1800.1,A,240
      1799.9,A,240
      ,B,248
      1806,B,248
      ,C,
      """;

  private static final String STEEL =
      "--gain -81 --young 210 --yield-uncertainty 3 --section tube:60.3x3.2";

  /** 8 MPa more: −0.381 ‰ each, as in the derivation of the step (5.5 mm of 1800). */
  @Test
  void certificatesForetellTheFirstPieceOfALot() throws IOException {
    Ran ran = file(LOTS, "--uncertainty 0.3 " + STEEL);
    assertEquals(ExitCode.WELL, ran.code(), ran.err());
    assertTrue(ran.out().get(2).contains("5.5 mm too wide"), ran.out().get(2));
    assertTrue(ran.out().get(4).contains("New lot: measure its first piece."), ran.out().get(4));
  }

  @Test
  void yieldStrengthsNeedTheMaterial() throws IOException {
    Ran bare = file(LOTS, "");
    assertEquals(ExitCode.BAD_INPUT, bare.code(), bare.err());
    assertTrue(bare.err().contains("--section is missing beside yield strengths"), bare.err());
    Ran mpa = file(LOTS, STEEL.replace("210", "210000"));
    assertTrue(mpa.err().contains("--young: 210000.0 is out of range"), mpa.err());
    Ran box = file(LOTS, STEEL.replace("tube:60.3x3.2", "box:60x40x3"));
    assertTrue(box.err().contains("section: BOX can't be foretold"), box.err());
    Ran twice = file(LOTS.replaceFirst("240\n", "241\n"), STEEL);
    assertTrue(twice.err().contains("row 3: yieldMpa: 240.0 is not what its lot had"), twice.err());
  }

  @Test
  void aSetUpIsYesOrNo() throws IOException {
    Ran ran = file("radius;setUp\n1784;perhaps\n", "--gain -81");
    assertTrue(ran.err().contains("set up: perhaps is neither yes nor no"), ran.err());
  }

  @Test
  void aFileAsJson() throws IOException {
    Ran ran = file(ROWS, "--gain -81 --json");
    JsonNode json = MAPPER.readTree(String.join("\n", ran.out()));
    assertEquals(5, json.get("rows").size());
    assertEquals("CORRECT", json.at("/rows/1/advice/action").asText());
    assertEquals(2, json.at("/rows/1/piece").asInt());
    assertEquals(-81, json.at("/gain/radiusMmPerUnit").asDouble(), 15);
    assertEquals(1, json.at("/promises/given").asInt());
    assertEquals(json.at("/rows/4/advice"), json.get("now"));
    assertFalse(json.get("caution").asText().isEmpty());
  }

  @Test
  void badRowsAreNamedAndTheOthersGoOn() throws IOException {
    String rows =
        """
        piece,radius,lot,before,after
        1,1801,A,,
        1,1801,B,,
        2,18x,A,,
        3,1802,A,12.4,
        4,,A,,
        5,1800,A,,
        """;
    Ran ran = file(rows, "");
    assertEquals(ExitCode.FAULT, ran.code());
    List<String> refused = ran.err().lines().toList();
    assertEquals(4, refused.size(), ran.err());
    assertTrue(refused.get(0).startsWith("row 3: row: 3 changes something within a piece"));
    assertTrue(refused.get(1).startsWith("row 4: radius: 18x is not a length"));
    assertTrue(refused.get(2).startsWith("row 5: after: none is missing"));
    assertTrue(refused.get(3).startsWith("row 6: radius: none is missing"));
    assertTrue(ran.out().get(1).contains("piece 2     LEAVE"), ran.out().get(1));
  }
}
