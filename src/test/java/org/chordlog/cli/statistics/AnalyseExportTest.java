package org.chordlog.cli.statistics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Random;
import java.util.function.UnaryOperator;
import java.util.stream.IntStream;
import org.chordlog.cli.common.ExitCode;
import org.chordlog.harness.Ran;
import org.chordlog.web.http.Json;
import org.junit.jupiter.api.Test;

/** Exported readings as a spreadsheet leaves them have the figures of the file as exported. */
final class AnalyseExportTest extends AnalyseRuns {
  private static final String HEADING =
      "id,job_id,piece,pass,position,time_utc,radius_mm,excluded_reason,phase";
  private static final int READINGS = 60;
  private static final int RADIUS = 6;

  /** Three places a piece, 2 mm apart; the second phase begins with piece 11, 6 mm higher. */
  private static List<String> exported() {
    Random random = new Random(3);
    List<String> rows = new ArrayList<>();
    for (int i = 0; i < READINGS; i++) {
      int piece = i / 3 + 1;
      int phase = piece <= 10 ? 1 : 2;
      String position = List.of("left", "middle", "right").get(i % 3);
      double radius = 1800 + 6 * phase + 2 * (i % 3) + random.nextGaussian();
      String excluded = i == 30 ? "chips" : "";
      rows.add(
          "%d,1,%d,1,%s,2026-05-04T10:%02d:%02d.5Z,%.3f,%s,%d"
              .formatted(i + 1, piece, position, i / 4, i % 4 * 15, radius, excluded, phase));
    }
    return rows;
  }

  private static String cell(String row, int column) {
    return row.split(",", -1)[column];
  }

  private static List<String> sorted(List<String> rows, int column) {
    return rows.stream().sorted(Comparator.comparing(row -> cell(row, column))).toList();
  }

  private static List<String> each(List<String> rows, UnaryOperator<String> change) {
    return rows.stream().map(change).toList();
  }

  private Ran analysed(List<String> rows, String... options) throws IOException {
    List<String> all = new ArrayList<>(List.of("--column", "radius_mm"));
    Collections.addAll(all, options);
    String csv = HEADING + "\n" + String.join("\n", rows) + "\n";
    return run(csv, all.toArray(String[]::new));
  }

  private JsonNode json(List<String> rows, String... options) throws IOException {
    List<String> all = new ArrayList<>(List.of("--json", "--lsl", "1790", "--usl", "1830"));
    Collections.addAll(all, options);
    return Json.shared().readTree(analysed(rows, all.toArray(String[]::new)).out());
  }

  private static List<JsonNode> figures(JsonNode analysis) {
    List<JsonNode> figures = new ArrayList<>();
    analysis.get("characteristics").forEach(part -> figures.add(part.get("figures")));
    return figures;
  }

  private void same(List<String> changed, String... options) throws IOException {
    assertEquals(figures(json(exported(), options)), figures(json(changed, options)));
  }

  @Test
  void sortedOtherwiseItHasTheSameFigures() throws IOException {
    List<String> turned = new ArrayList<>(exported());
    Collections.reverse(turned);
    for (List<String> rows : List.of(sorted(exported(), 4), sorted(exported(), RADIUS), turned)) {
      same(rows);
      same(rows, "--phase", "newest");
      same(rows, "--subgroup", "3");
      same(rows, "--piece-column", "piece", "--position-column", "position");
      String out = analysed(rows).out();
      assertTrue(out.contains("Rows were taken by the numbers in column id"), out);
    }
  }

  /** A spreadsheet shows times to the minute, and several pieces are measured in one. */
  @Test
  void withoutSecondsToo() throws IOException {
    List<String> rows = each(exported(), row -> row.replaceFirst(":\\d{2}\\.5Z", ""));
    same(sorted(rows, RADIUS));
    same(sorted(each(rows, row -> row.replaceFirst("2026-05-04T", "5/4/2026 ")), RADIUS));
  }

  /** The statistics of a job take pieces that were moved to it last, though they are older. */
  @Test
  void movedPiecesAreTakenWhereTheyWereStored() throws IOException {
    List<String> moved =
        each(exported(), row -> row.startsWith("6") ? row.replace("T10:", "T08:") : row);
    same(moved);
    String out = analysed(moved).out();
    assertFalse(out.contains("Rows were taken"), out);
  }

  @Test
  void whatIsPastedBelowCountsOnce() throws IOException {
    List<String> twice = new ArrayList<>(exported());
    twice.add(HEADING);
    twice.addAll(exported());
    same(twice);
    String out = analysed(twice).out();
    assertTrue(out.contains("Line left out, the heading again: 62"), out);
    assertTrue(out.contains("Lines left out, equal to a row above in every cell: 63, 64"), out);
    assertTrue(out.contains("They count with --all-rows."), out);
    assertEquals(63, json(twice).get("rowsAgain").get(0).asInt());
    assertEquals(62, json(twice).get("headingsAgain").get(0).asInt());
    assertTrue(analysed(twice, "--all-rows").out().contains("118 readings"));
  }

  @Test
  void aSumBelowASortedFileIsNoReading() throws IOException {
    List<String> rows = new ArrayList<>(sorted(exported(), 4));
    rows.add("Average,,,,,,1811.5,,");
    same(rows, "--piece-column", "piece", "--position-column", "position");
    String out = analysed(rows).out();
    assertTrue(out.contains("Line left out, a summary of other rows: 62"), out);
    assertTrue(out.contains("Line left out, excluded_reason says why: 12"), out);
  }

  @Test
  void theNewestPhaseIsThatOfTheHighestNumber() throws IOException {
    List<String> turned = new ArrayList<>(exported());
    Collections.reverse(turned);
    String out = analysed(turned, "--file-order", "--phase", "newest").out();
    assertTrue(out.startsWith("radius_mm: 29 readings, phase 2, since the last change"), out);
  }

  @Test
  void phasesThatAreNotTogetherAreTold() throws IOException {
    String out = analysed(sorted(exported(), 4), "--file-order").out();
    assertTrue(out.contains("Phases are not together in that order of rows: they change 5"), out);
    assertFalse(analysed(exported()).out().contains("not together"));
  }

  /** It is left out, but it is where it belongs. */
  @Test
  void aPhaseThatIsExcludedAsAWholeIsNotSaidToComeAgain() throws IOException {
    List<String> rows =
        each(
            exported(),
            row ->
                Integer.parseInt(cell(row, 2)) > 15
                    ? row.replaceFirst("2$", "3")
                    : row.replaceFirst(",,2$", ",set up,2"));
    String out = analysed(rows).out();
    assertTrue(out.startsWith("radius_mm: 45 readings, phases 1, 3"), out);
    assertFalse(out.contains("not together"), out);
  }

  /** A filter may have hidden the rows of a phase. */
  @Test
  void aPhaseThatIsNotThereIsNotSaidToBe() throws IOException {
    List<String> rows =
        each(exported(), row -> row.endsWith(",2") ? row.replaceFirst(".$", "3") : row);
    String out = analysed(rows).out();
    assertTrue(out.startsWith("radius_mm: 59 readings, phases 1, 3"), out);
    assertTrue(analysed(exported()).out().contains(", whole job: phases 1 to 2"));
  }

  @Test
  void severalJobsTogetherAreTold() throws IOException {
    List<String> rows = new ArrayList<>(exported());
    IntStream.range(0, READINGS)
        .mapToObj(i -> exported().get(i).replaceFirst("^\\d+,1,", (100 + i) + ",2,"))
        .forEach(rows::add);
    String out = analysed(rows).out();
    assertTrue(out.contains("Caution: readings of 2 jobs were taken together"), out);
    Ran phase = analysed(rows, "--phase-column", "phase", "--phase", "newest");
    assertEquals(ExitCode.BAD_INPUT, phase.code());
    assertTrue(phase.err().contains("could be of any of the jobs 1, 2"), phase.err());
  }

  @Test
  void eachJobHasPhasesOfItsOwn() throws IOException {
    List<String> rows = new ArrayList<>(each(exported(), row -> row.replaceFirst(".$", "1")));
    IntStream.range(0, READINGS)
        .mapToObj(i -> rows.get(i).replaceFirst("^\\d+,1,", (100 + i) + ",2,"))
        .toList()
        .forEach(rows::add);
    String out = analysed(rows, "--phase-column", "phase").out();
    assertTrue(out.contains("Moving range, 118 points"), out);
  }

  /** Three readings in the first pass of each piece, two in the second. */
  @Test
  void piecesOfTwoPassesAreCompleteInAnyOrder() throws IOException {
    List<String> rows = new ArrayList<>();
    for (int i = 0; i < READINGS; i++) {
      String pass = i % 5 < 3 ? "1" : "2";
      rows.add(exported().get(i).replaceFirst("1,\\d+,1,", "1," + (i / 5 + 1) + "," + pass + ","));
    }
    JsonNode filed = json(rows, "--piece-column", "piece");
    JsonNode turned = json(sorted(rows, RADIUS), "--piece-column", "piece");
    assertEquals(figures(filed), figures(turned));
  }
}
