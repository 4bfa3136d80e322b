package org.chordlog.cli.statistics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.chordlog.cli.common.ExitCode;
import org.chordlog.harness.Ran;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The command on real files. */
final class AnalyseTest {
  @TempDir private Path folder;

  private Ran run(String content, String... options) throws IOException {
    Path file = Files.writeString(folder.resolve("data.csv"), content);
    return Ran.command(List.of("analyse", file.toString()), options);
  }

  @Test
  void jsonHasFiguresWithMethodAndSource() throws IOException {
    Ran ran =
        run(
            "piece;radius\n1;9,9\n2;10,1\n3;10,0\n4;NaN\n5;\n6;10,2\n",
            "--column",
            "radius",
            "--lsl",
            "9,0",
            "--usl",
            "11",
            "--json");
    assertEquals(ExitCode.WELL, ran.code(), ran.err());
    JsonNode json = JsonMapper.builder().build().readTree(ran.out());
    assertEquals(4, first(json).get("count").asLong());
    assertEquals("[5,6]", json.get("rowsLeftOut").toString());
    JsonNode mean = figure(json, "mean");
    assertEquals(10.05, mean.get("value").asDouble(), 1e-12);
    assertTrue(mean.get("lower").asDouble() < 10.05);
    assertFalse(mean.get("method").asText().isEmpty());
    assertFalse(figure(json, "Ppk").get("source").asText().isEmpty());
    assertEquals("INDIVIDUALS", first(json).get("charts").get(0).get("kind").asText());
  }

  @Test
  void aWrongFileOrColumnIsToldInWords() throws Exception {
    Ran unknown = run("piece;radius\n1;9\n", "--column", "depth");
    assertEquals("--column: depth is not a column; allowed: piece, radius", unknown.err().strip());
    String none = folder.resolve("none.csv").toString();
    String said = "FILE: " + none + " is not there; allowed: a CSV file; check its name and folder";
    assertEquals(said, Ran.command("analyse", none).err().strip());
  }

  private static JsonNode first(JsonNode json) {
    return json.get("characteristics").get(0);
  }

  private static JsonNode figure(JsonNode json, String name) {
    for (JsonNode figure : first(json).get("figures")) {
      if (figure.get("name").asText().equals(name)) {
        return figure;
      }
    }
    throw new AssertionError(name);
  }

  @Test
  void textTellsSignalsAndExitCodeSaysSo() throws IOException {
    Ran ran = run("value\n" + "5\n6\n".repeat(20) + "30\n", "--usl", "20", "--tests", "1");
    assertEquals(ExitCode.FAULT, ran.code());
    assertTrue(
        ran.out().contains("point 41 (30): beyond a control limit, above (test 1)"), ran.out());
    assertTrue(ran.out().contains("Caution: One specification limit"), ran.out());
  }

  @Test
  void subgroupsBySizeAndByColumn() throws IOException {
    Ran sized = run("1\n2\n3\n2\n3\n1\n2", "--subgroup", "3");
    assertTrue(sized.out().contains("Mean, 2 points"), sized.out());
    assertTrue(
        sized.out().contains("The newest reading is not on the charts yet: 2 more complete its"),
        sized.out());
    Ran grouped =
        run("p,v\na,1\na,2\nb,2\nb,3\nb,1\nc,1", "--column", "v", "--subgroup-column", "p");
    assertTrue(grouped.out().contains("Mean, 2 points"), grouped.out());
  }

  private JsonNode json(String content, String... options) throws IOException {
    return JsonMapper.builder().build().readTree(run(content, options).out());
  }

  private static List<String> characteristics(JsonNode json) {
    List<String> names = new ArrayList<>();
    json.get("characteristics").forEach(each -> names.add(each.get("characteristic").asText()));
    return names;
  }

  /** Two positions of 12 pieces, the end 2 above the start. */
  private static String positions() {
    StringBuilder csv = new StringBuilder("piece,where,radius\n");
    for (int piece = 1; piece <= 12; piece++) {
      double level = 100 + piece % 3;
      csv.append("%d,start,%.1f%n%d,end,%.1f%n".formatted(piece, level, piece, level + 2));
    }
    return csv.toString();
  }

  /** Other programs read them; what a chart is inside the program may change. */
  @Test
  void chartsHaveTheNamesThatProgramsRead() throws IOException {
    JsonNode chart = first(json(positions(), "--column", "radius", "--json")).get("charts").get(0);
    assertEquals(
        List.of(
            "kind",
            "quantity",
            "unit",
            "points",
            "limits",
            "events",
            "lowerSpecificationLimit",
            "upperSpecificationLimit",
            "target",
            "pointCount",
            "signallingCount"),
        names(chart));
    assertEquals(
        List.of(
            "number",
            "value",
            "lowerValue",
            "size",
            "firstReadingId",
            "lastReadingId",
            "piece",
            "position",
            "atMicros",
            "excluded",
            "reason",
            "signals"),
        names(chart.get("points").get(0)));
  }

  private static List<String> names(JsonNode object) {
    List<String> names = new ArrayList<>();
    object.fieldNames().forEachRemaining(names::add);
    return names;
  }

  @Test
  void positionsAreKeptApartAndComparedAndPiecesGrouped() throws IOException {
    JsonNode apart =
        json(positions(), "--column", "radius", "--position-column", "where", "--json");
    assertEquals(List.of("start", "end"), characteristics(apart));
    assertEquals(12, first(apart).get("count").asLong());
    String[] byPiece = {
      "--column", "radius", "--position-column", "where", "--piece-column", "piece", "--json"
    };
    JsonNode grouped = json(positions(), byPiece);
    assertEquals(List.of("whole piece", "start", "end"), characteristics(grouped));
    assertEquals(11, first(grouped).get("charts").get(2).get("pointCount").asLong(), "one waits");
    JsonNode end = grouped.get("positionEffects").get(1);
    assertEquals("end", end.get("position").asText());
    assertEquals(1, end.get("meanDifference").asDouble(), 1e-9);
    assertTrue(end.get("differs").asBoolean());
    assertEquals(12, grouped.get("trend").get("pieces").asLong());
  }

  /** Three jobs at radii of their own, the last one 1 % off: only their deviations tell. */
  @Test
  void jobsPoolByTheirNominals() throws IOException {
    StringBuilder csv = new StringBuilder("job,aim,sigma,radius\n");
    for (int i = 0; i < 36; i++) {
      int aim = 600 + 300 * (i / 12);
      double off = Math.sin(2.1 * i) * aim / 1000.0 + (i >= 24 ? 0.01 * aim : 0);
      csv.append("J%d,%d,%.1f,%.3f%n".formatted(i / 12, aim, aim / 1000.0, aim + off));
    }
    String[] options = {
      "--column",
      "radius",
      "--job-column",
      "job",
      "--nominal-column",
      "aim",
      "--sigma-column",
      "sigma",
      "--json"
    };
    JsonNode json = json(csv.toString(), options);
    assertTrue(figure(json, "maximum").get("value").asDouble() > 8);
    assertEquals("JUMPED", json.get("trend").get("state").asText());
    assertEquals(25, json.at("/trend/findings/0/since/piece").asLong());
    assertEquals(0.01, json.at("/trend/findings/0/change").asDouble(), 5e-4);
    assertTrue(json.get("trendRelativeTo").isNull());
  }

  @ParameterizedTest
  @CsvSource({
    "--sigma-column value, --sigma-column",
    "--position-column nope, --position-column",
    "--nominal-column value --sigma-column 9, --sigma-column",
    "--lsl 5 --usl 4, lowerSpecificationLimit",
    "--lsl x, --lsl",
    "--subgroup 26, --subgroup",
    "--tests 9, --tests",
    "--column nope, --column"
  })
  void badInputNamesTheField(String options, String field) throws IOException {
    Ran ran = run("value\n1\n2\n", options.split(" ", -1));
    assertEquals(ExitCode.BAD_INPUT, ran.code());
    assertTrue(ran.err().startsWith(field), ran.err());
    assertFalse(ran.err().contains("\tat "));
  }

  @Test
  void missingAndEmptyFilesAreBadInput() throws IOException {
    assertEquals(ExitCode.BAD_INPUT, run("").code());
    assertEquals(
        ExitCode.BAD_INPUT, Ran.command("analyse", folder.resolve("none").toString()).code());
  }

  @Test
  void noNumbersAtAll() throws IOException {
    Ran ran = run("value\nNaN\nx\n", "--lsl", "1");
    assertEquals(ExitCode.WELL, ran.code(), ran.err());
    assertTrue(ran.out().contains("There are no readings."), ran.out());
  }

  @Test
  void decimalCommasOfASingleColumnAreNotCut() throws IOException {
    JsonNode json = json("radius\n1001,5\n1002,9\n1003,2\n1001,8\n1002,4\n", "--json");
    assertEquals(1002.36, figure(json, "mean").get("value").asDouble(), 1e-9);
    Ran longer = run("piece,radius\n1,1001,5\n2,1002,9\n", "--column", "radius");
    assertEquals(ExitCode.BAD_INPUT, longer.code());
    assertTrue(longer.err().startsWith("line 2"), longer.err());
  }

  @Test
  void figuresLotByLotAndOfOneLot() throws IOException {
    String file = "radius,material_lot\n1,A\n3,A\n11,B\n15,B\n19,B\n";
    JsonNode lots = json(file, "--column", "radius", "--lot-column", "material_lot", "--json");
    assertEquals("A", lots.at("/lots/0/lot").asText());
    assertEquals(2, lots.at("/lots/0/summary/count").asInt());
    String text = run(file, "--column", "radius", "--lot-column", "2").out();
    assertTrue(text.contains("Lot B: 3 readings, mean 15, s 4"), text);
    JsonNode one = json(file, "--column", "radius", "--lot", "B", "--json");
    assertEquals(15, figure(one, "mean").get("value").asDouble());
    Ran unknown = run(file, "--column", "radius", "--lot", "C", "--lot-column", "heat");
    assertEquals(ExitCode.BAD_INPUT, unknown.code());
  }

  @Test
  void linesAreThoseOfTheFile() throws IOException {
    assertEquals("[5]", json("x\n1\n\n2\nabc\n3\n", "--json").get("rowsLeftOut").toString());
  }

  /** Tests 1, 2, 5 and 6 alone break in most such files; the exit code says so in few. */
  @Test
  void exitCodeOfSteadyFiles() throws IOException {
    int faults = 0;
    for (int seed = 1; seed <= 60; seed++) {
      java.util.Random random = new java.util.Random(seed);
      StringBuilder csv = new StringBuilder("x\n");
      for (int i = 0; i < 200; i++) {
        csv.append("%.4f%n".formatted(100 + random.nextGaussian()));
      }
      faults += run(csv.toString(), "--json").code() == ExitCode.FAULT ? 1 : 0;
    }
    assertTrue(faults <= 8, faults + " of 60");
  }

  @Test
  void parametersOfTheChartsAreTold() throws IOException {
    String out = run("x\n1\n2\n3\n").out();
    assertTrue(out.contains("EWMA: λ 0.2, limits ± 2.962 σ"), out);
    assertTrue(out.contains("CUSUM: k 0.5, h 5.0, head start 2.5"), out);
  }

  @Test
  void aFallIsToldWithTheSumThatSawIt() throws IOException {
    StringBuilder csv = new StringBuilder("x\n");
    for (int i = 0; i < 40; i++) {
      csv.append(i < 30 ? 10 + i % 2 : 4 + i % 2).append('\n');
    }
    String out = run(csv.toString(), "--baseline", "20").out();
    String cusum = out.substring(out.indexOf("CUSUM, 40 points"));
    String first =
        cusum.lines().filter(each -> each.contains("below (test 1)")).findFirst().orElse("");
    assertFalse(first.isEmpty() || first.contains("(0)"), out);
  }
}
