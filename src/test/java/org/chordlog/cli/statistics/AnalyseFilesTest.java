package org.chordlog.cli.statistics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.List;
import java.util.Random;
import org.chordlog.cli.common.ExitCode;
import org.chordlog.harness.Ran;
import org.chordlog.web.http.Json;
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

  /** A piece may be called as a sum is; who knows the file says so. */
  @Test
  void allRowsAreDataWhereThatIsSaid() throws IOException {
    String csv = "piece;radius\nTop;10\nMean;12\nEnd;11\n";
    String told = run(csv, "--column", "radius").out();
    assertTrue(told.startsWith("radius: 2 readings"), told);
    assertTrue(told.contains("They count with --all-rows."), told);
    String said = run(csv, "--column", "radius", "--all-rows").out();
    assertTrue(said.startsWith("radius: 3 readings"), said);
  }

  @Test
  void whatTheFirstLineIsCanBeSaid() throws IOException {
    String days = "piece;4.5.2026;5.5.2026\nA;10;20\nB;12;22\n";
    Ran refused = run(days, "--column", "2");
    assertEquals(ExitCode.BAD_INPUT, refused.code());
    assertTrue(refused.err().contains("--first-line names or data says which it is"), refused::err);
    String names = run(days, "--column", "5.5.2026", "--first-line", "names").out();
    assertTrue(names.startsWith("5.5.2026: 2 readings"), names);
    String data = run("n/a\n10\n12\n", "--first-line", "data").out();
    assertTrue(data.startsWith("1: 2 readings"), data);
  }

  /** Nobody asked for these columns, so that two of a name are no fault. */
  @ParameterizedTest
  @ValueSource(strings = {"date", "time", "position", "piece", "id", "phase"})
  void otherColumnsMayHaveOneNameTwice(String name) throws IOException {
    Ran ran = run("%1$s;radius;%1$s\n1;10;7\n2;12;8\n".formatted(name), "--column", "radius");
    assertTrue(ran.out().startsWith("radius: 2 readings"), ran::toString);
  }

  /** Within a minute two readings may be alike. */
  @Test
  void timesWithSecondsTellThatRowsAreThereTwice() throws IOException {
    String rows = "2026-05-04 10:00:01;5\n2026-05-04 10:01:07;6\n2026-05-04 10:01:31;5\n";
    String out = run("time;radius\n" + rows + rows, "--column", "radius").out();
    assertTrue(out.startsWith("radius: 3 readings"), out);
    String minutes = rows.replaceAll(":\\d\\d;", ";");
    String counted = run("time;radius\n" + minutes + minutes, "--column", "radius").out();
    assertTrue(counted.startsWith("radius: 6 readings"), counted);
    assertTrue(counted.contains("counted twice"), counted);
  }

  /** Phase 2 begins with a reading of lot B: that of A has no range across it either. */
  @Test
  void aPhasePartsEachLotByItself() throws IOException {
    String csv = "lot;phase;radius\nA;1;10\nA;1;11\nB;2;20\nA;2;30\nA;2;31\nB;2;21\n";
    String out =
        run(csv, "--column=radius", "--lot-column=lot", "--phase-column=phase", "--json").out();
    double within =
        Json.shared().readTree(out).at("/lots/0/summary/figures").findParents("name").stream()
            .filter(each -> each.get("name").asText().equals("standardDeviationWithin"))
            .findFirst()
            .orElseThrow()
            .get("value")
            .asDouble();
    assertEquals(1 / 1.128, within, 0.01);
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

  /** On a day many readings are alike, and nothing else tells them apart. */
  @Test
  void readingsOfADayAreNotThereTwice() throws IOException {
    String csv = "date;radius\n4.5.2026;10\n4.5.2026;12\n4.5.2026;10\n5.5.2026;10\n";
    String out = run(csv, "--column", "radius").out();
    assertTrue(out.startsWith("radius: 4 readings"), out);
    assertFalse(out.contains("twice"), out);
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
