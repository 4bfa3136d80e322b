package org.chordlog.cli.statistics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.chordlog.cli.common.ExitCode;
import org.chordlog.harness.Ran;
import org.junit.jupiter.api.Test;

/** The command on real files. */
final class AnalyseTest extends AnalyseRuns {
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

  /** As the job they were exported from: its figures leave them out. */
  @Test
  void readingsExcludedInAnExportAreLeftOutAndNamed() throws IOException {
    String file = "radius,excluded_reason\n1800,\n1700,bridge tilted\n1802,\n";
    String text = run(file, "--column", "radius").out();
    assertTrue(text.contains("radius: 2 readings"), text);
    assertTrue(text.contains("Line left out, excluded_reason says why: 3"), text);
    JsonNode told = json(file, "--column", "radius", "--json").get("rowsExcluded");
    assertEquals("[3]", told.toString());
  }

  @Test
  void linesAreThoseOfTheFile() throws IOException {
    assertEquals("[5]", json("x\n1\n\n2\nabc\n3\n", "--json").get("rowsLeftOut").toString());
  }
}
