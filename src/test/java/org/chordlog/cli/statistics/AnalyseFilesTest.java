package org.chordlog.cli.statistics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.List;
import java.util.Random;
import org.chordlog.cli.common.ExitCode;
import org.chordlog.harness.Ran;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Files as people have them: sorted otherwise, with summaries below, put together twice. */
final class AnalyseFilesTest extends AnalyseRuns {
  private static final List<String> POSITIONS = List.of("left", "middle", "right");
  private static final int PIECES = 12;

  /** All of one position after all of another, which are 5 mm apart. */
  private static String byPosition(String heading, String time) {
    Random random = new Random(7);
    StringBuilder csv = new StringBuilder(heading).append('\n');
    for (String position : POSITIONS) {
      for (int piece = 1; piece <= PIECES; piece++) {
        double radius = 1800 + 5 * POSITIONS.indexOf(position) + random.nextGaussian();
        String at = time.formatted(piece, POSITIONS.indexOf(position));
        csv.append("%d,%s,%s,%.2f%n".formatted(piece, position, at, radius));
      }
    }
    return csv.toString();
  }

  @ParameterizedTest
  @ValueSource(strings = {"2026-05-04T%02d:0%d:00Z", "2026-05-04 %02d:0%d", "4.5.2026 %02d:0%d:30"})
  void rowsAreTakenByTheirTimes(String time) throws IOException {
    String csv = byPosition("piece,position,time,radius_mm", time);
    Ran ran = run(csv, "--column", "radius_mm");
    assertTrue(ran.out().contains("Rows were taken by their times in column time;"), ran.out());
    assertEquals(ExitCode.WELL, ran.code(), ran.out());
    Ran asFiled = run(csv, "--column", "radius_mm", "--file-order");
    assertEquals(ExitCode.FAULT, asFiled.code(), asFiled.out());
  }

  @Test
  void withoutTimesTheyAreTakenPieceByPiece() throws IOException {
    Ran ran = run(byPosition("piece,position,note,radius_mm", "x"), "--column", "radius_mm");
    assertTrue(
        ran.out()
            .contains(
                "Rows were taken piece by piece (column piece); the file has all"
                    + " of left, then all of middle"),
        ran.out());
    assertEquals(ExitCode.WELL, ran.code(), ran.out());
  }

  /** Days alone do not say which of their readings was first. */
  @Test
  void withinADayToo() throws IOException {
    Ran ran = run(byPosition("piece,position,date,radius_mm", "4.5.2026"), "--column", "radius_mm");
    assertEquals(ExitCode.WELL, ran.code(), ran.out());
  }

  @Test
  void withoutPiecesTheOrderIsTold() throws IOException {
    Ran ran = run(byPosition("no,position,note,radius_mm", "x"), "--column", "radius_mm");
    assertTrue(ran.out().contains("Rows were taken as the file has them: all of left"), ran.out());
  }

  @Test
  void timesThatCouldBeTwoAreNotUsedAndRefusedWhereAskedFor() throws IOException {
    String csv = "date,radius\n05/04/2026,5\n05/05/2026,6\n";
    Ran ran = run(csv, "--column", "radius");
    assertTrue(
        ran.out()
            .contains(
                "Times were not used for the order of rows: row 2, column date: 05/04/2026 could"
                    + " be day or month first"),
        ran.out());
    Ran asked = run(csv, "--column", "radius", "--time-column", "date");
    assertEquals(ExitCode.BAD_INPUT, asked.code());
    assertTrue(asked.err().startsWith("row 2, column date: 05/04/2026 could be"), asked.err());
  }

  @Test
  void aDayAndItsTimeMayHaveAColumnEach() throws IOException {
    String csv = "date,time,radius\n4.5.2026,10:30,5\n4.5.2026,9:30,6\n3.5.2026,11:00,7\n";
    Ran ran = run(csv, "--column", "radius");
    assertTrue(ran.out().contains("Rows were taken by their times in column time"), ran.out());
  }

  @Test
  void aSummaryBelowIsLeftOutAndTold() throws IOException {
    String csv = "piece;radius\n1;10\n2;12\n3;11\nAverage;500\nMax;900\n";
    Ran ran = run(csv, "--column", "radius");
    assertTrue(ran.out().startsWith("radius: 3 readings"), ran.out());
    assertTrue(ran.out().contains("Lines left out, a summary of other rows: 5, 6"), ran.out());
    Ran json = run(csv, "--column", "radius", "--json");
    assertTrue(json.out().contains("\"rowsSummingUp\""), json.out());
  }

  @Test
  void theHeadingThatWasTakenIsTold() throws IOException {
    Ran ran = run("piece;radius\n1;10\n2;12\n", "--column", "radius");
    assertTrue(ran.out().contains("The first line names the columns: piece, radius."), ran.out());
    assertFalse(run("10\n12\n").out().contains("names the columns"));
  }

  @Test
  void rowsThatAreThereTwiceAreTold() throws IOException {
    String rows = "1;10\n2;12\n3;11\n";
    Ran ran = run("piece;radius\n" + rows + rows, "--column", "radius");
    assertTrue(ran.out().contains("Caution: lines 5 to 7 are there twice"), ran.out());
    Ran other = run("piece;radius\n" + rows + "4;11\n4;11\n", "--column", "radius");
    assertFalse(other.out().contains("twice"), other.out());
    String timed = "time;radius\n2026-05-04 10:00;5\n2026-05-04 10:01;5\n2026-05-04 10:01;5\n";
    assertTrue(run(timed, "--column", "radius").out().contains("Caution: line 4 is there twice"));
  }

  /**
   * Spaces that don't break, what divides the cells on a line of its own, empty cells at the end.
   */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "\uFEFFsep=;\r\npiece;radius\r\n1;10,5\r\n2;12,5\r\n",
        "\"sep=;\"\npiece;radius\n1;10,5\n2;12,5\n",
        "\n\npiece;radius\n1;10,5\n2;12,5\n",
        "piece;radius\u00a0\n1;\u00a010,5\n2;12,5\u202f\n",
        "piece;radius\n1;10,5;\n2;12,5;\n",
        ";radius;\n1;10,5;\n2;12,5;\n"
      })
  void whatSpreadsheetsAddIsPassedOver(String csv) throws IOException {
    Ran ran = run(csv, "--column", "radius");
    assertTrue(ran.out().startsWith("radius: 2 readings"), ran::toString);
    assertTrue(ran.out().contains("11.5"), ran.out());
  }
}
