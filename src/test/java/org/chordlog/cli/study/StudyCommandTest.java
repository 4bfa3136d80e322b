package org.chordlog.cli.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.chordlog.cli.common.ExitCode;
import org.chordlog.harness.Ran;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The command on files; the figures are those of the studies' own tests. */
final class StudyCommandTest {
  private static final String CROSSED = "parts-appraisers-trials.csv";

  @TempDir private Path folder;

  private static JsonNode json(Ran ran) throws IOException {
    return JsonMapper.builder().build().readTree(ran.out());
  }

  private static JsonNode figure(Ran ran, String name) throws IOException {
    for (JsonNode figure : json(ran).get("figures")) {
      if (figure.get("name").asText().equals(name)) {
        return figure;
      }
    }
    throw new AssertionError(name);
  }

  private static Ran run(String... arguments) {
    return Ran.command(List.of(), arguments);
  }

  private static String content(String name) throws IOException {
    try (var in = StudyCommandTest.class.getResourceAsStream("/study/" + name)) {
      return new String(
          java.util.Objects.requireNonNull(in).readAllBytes(), StandardCharsets.UTF_8);
    }
  }

  private Ran study(String content, String... options) throws IOException {
    Path file = Files.writeString(folder.resolve("data.csv"), content);
    return Ran.command(List.of("study", file.toString()), options);
  }

  @Test
  void crossedAsJson() throws IOException {
    Ran ran = study(content(CROSSED), "--kind", "crossed", "--json");
    assertEquals(ExitCode.WELL, ran.code(), ran.err());
    assertEquals("UNDECIDED", json(ran).get("verdict").asText());
    JsonNode gauge = figure(ran, "percentGRR");
    assertEquals(27.8607, gauge.get("value").asDouble(), 5e-5);
    assertTrue(gauge.get("lower").asDouble() < 20 && gauge.get("upper").asDouble() > 60);
    assertEquals("%", gauge.get("unit").asText());
    assertEquals("UNDECIDED", gauge.get("judged").get("verdict").asText());
    assertFalse(gauge.get("method").asText().isEmpty());
    assertFalse(gauge.get("source").asText().isEmpty());
    JsonNode other = json(ran).get("alternatives").get(0);
    assertEquals("interaction kept", other.get("name").asText());
    assertEquals("piece", json(ran).get("analysisOfVariance").get(0).get("source").asText());
  }

  @Test
  void textGivesVerdictFiguresTablesAndCautions() throws IOException {
    String out = study(content(CROSSED), "--kind", "crossed", "--budget", "0.1").out();
    assertTrue(out.contains("10 pieces × 3 operators × 3 repeats"), out);
    assertTrue(out.contains("Undecided: gauge"), out);
    assertTrue(out.contains("15.3 to 80.6"), out);
    assertTrue(out.contains("The same with interaction kept:"), out);
    assertTrue(out.contains("Budget: The study shows 3.02 times"), out);
    assertTrue(out.contains("Caution: 3 operators say little"), out);
  }

  /** Radii near 1000 mm: the study is in curvature, the figures in mm. */
  @Test
  void radiiAreStudiedInCurvature() throws IOException {
    StringBuilder csv = new StringBuilder("operator;repeat;part;value\n");
    content(CROSSED)
        .lines()
        .skip(1)
        .map(line -> line.split(",", -1))
        .forEach(
            c ->
                csv.append(
                    String.format(
                        Locale.ROOT,
                        "%s;%s;%s;%.5f%n",
                        c[0],
                        c[1],
                        c[2],
                        1000 + Double.parseDouble(c[3]) / 10)));
    String decimalComma = csv.toString().replace('.', ',');
    String[] options = {
      "--kind", "crossed", "--nominal", "1000", "--lsl", "999.7", "--usl", "1000.3", "--json"
    };
    Ran ran = study(decimalComma, options);
    assertEquals("mm", figure(ran, "GRR").get("unit").asText());
    assertEquals(0.03024, figure(ran, "GRR").get("value").asDouble(), 1e-4);
    assertEquals(30.24, figure(ran, "percentToleranceGRR").get("value").asDouble(), 0.05);
    String[] inches = Arrays.copyOf(options, options.length + 2);
    inches[options.length] = "--unit";
    inches[options.length + 1] = "inch";
    Ran same = study(decimalComma, inches);
    assertEquals("in", figure(same, "GRR").get("unit").asText());
    assertEquals(figure(ran, "GRR").get("value"), figure(same, "GRR").get("value"));
  }

  @Test
  void everyKindRuns() throws IOException {
    runs(content(CROSSED), "EV", "--kind", "range");
    runs(content(CROSSED), "EV", "--kind", "nested");
    runs(content("parts-one-operator.csv"), "EV", "--kind", "one-operator");
    runs(content("linearity-five-masters.csv"), "slope", "--kind", "linearity");
    runs("value\n5.8\n5.7\n6.1\n6.2\n", "bias", "--kind", "bias", "--reference", "6");
    String[] typeOne = {"--kind", "type1", "--reference", "6", "--tolerance", "4"};
    runs("value\n5.8\n5.7\n6.1\n6.2\n", "Cgk", typeOne);
    runs("day,value\n1,5\n1,5.1\n2,5.2\n2,5.1\n3,4.9\n3,5\n", "level2", "--kind", "stability");
    runs(
        """
        placing,part,value
        eye,1,5
        eye,1,5.4
        eye,2,6
        eye,2,6.2
        marks,1,5.1
        marks,1,5.2
        marks,2,6.1
        marks,2,6.2
        """,
        "placing",
        "--kind",
        "placing");
    String[] process = {"--kind", "process", "--tolerance", "0.2"};
    runs("contribution,u,degrees\nCAL,0.004,\nu_EVR,0.006,24\nAV,0.01,2\n", "Q_MP", process);
    StringBuilder split = new StringBuilder("part,place,operator,value\n");
    for (int i = 0; i < 24; i++) {
      split.append("%d,%s,%s,%d%n".formatted(i / 8, i / 4 % 2, i / 2 % 2, i * i % 7));
    }
    runs(split.toString(), "PVplace", "--kind", "split");
    runs(split.toString(), "PVplace", "--kind", "split", "--marks");
  }

  private void runs(String content, String figure, String... options) throws IOException {
    List<String> all = new ArrayList<>(List.of(options));
    all.add("--json");
    Ran ran = study(content, all.toArray(String[]::new));
    assertTrue(ran.code() == ExitCode.WELL || ran.code() == ExitCode.FAULT, ran.err());
    assertTrue(figure(ran, figure).get("value").isNumber(), ran.out());
    boolean fails = json(ran).get("verdict").asText().equals("FAILS");
    assertEquals(fails ? ExitCode.FAULT : ExitCode.WELL, ran.code());
  }

  /** Depths on a span of 200 mm that is 0.04 mm too long, the zero 3 µm off. */
  @Test
  void linearityOfDepthsTellsSpanAndZero() throws IOException {
    StringBuilder csv = new StringBuilder("reference,value\n");
    for (double radius : new double[] {500, 800, 1200, 2000}) {
      double half = 100.02;
      double depth = half * half / (radius + Math.sqrt(radius * radius - half * half));
      csv.append(radius).append(',').append(depth + 0.003).append('\n');
    }
    Ran ran = study(csv.toString(), "--kind", "linearity", "--span", "200", "--json");
    assertEquals(0.04, figure(ran, "spanError").get("value").asDouble(), 1e-3);
    assertEquals(0.003, figure(ran, "zeroError").get("value").asDouble(), 3e-5);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "part,operator,value/1,A,3/1,B,x | crossed | row 3, column value: 'x' is not a number",
        "part,operator,value/1,A,3/1,,4 | crossed | row 3, column operator: nothing is there",
        "part,operator,value/1,A,3/2,A,4 | crossed | rows 2, 3, column operator: A is the only one",
        "part,operator,value/1,A,3/1,B,4/2,A,5 | crossed | no row, column repeat, for piece 2,"
            + " operator B: repeat 1 is missing",
        "part,operator,value/1,A,3/1,B,3/2,A,3/2,B,3 | crossed | rows 2, 3, 4, 5, column value: 3.0"
            + " is the same in every",
        "part,operator,repeat,value/1,A,0,3 | crossed | row 2, column repeat: 0.0 is not a count",
        "part,value/1,3/1,4/2,3/2,5 | split | column place: place is not a column",
        "value/1/2 | bias | --reference: nothing was given",
        "value/1/2 | crossing | --kind: crossing is not a study",
        "contribution,u/XX,1 | process | column contribution: XX is not a contribution; allowed: RE, CAL",
        "contribution,u/CAL,1 | process | --tolerance: nothing was given; allowed: the width between"
      })
  void badInputIsOneSentence(String lines, String kind, String start) throws IOException {
    Ran ran = study(lines.strip().replace("/", "\n"), "--kind", kind.strip());
    assertEquals(ExitCode.BAD_INPUT, ran.code(), ran.out());
    assertTrue(ran.err().startsWith(start.strip()), ran.err());
    assertEquals(1, ran.err().strip().lines().count(), ran.err());
  }

  @Test
  void withoutFileOrKind() throws IOException {
    assertTrue(run("study", "--kind", "crossed").err().startsWith("FILE: nothing was given"));
    assertTrue(study("value\n1\n2\n").err().startsWith("--kind: nothing was given"));
  }

  @Test
  void thePlanSaysHowManyAreNeeded() throws IOException {
    Ran ran = run("study", "plan", "--expected", "10", "--json");
    assertEquals(ExitCode.WELL, ran.code(), ran.err());
    assertTrue(json(ran).get("readings").asInt() >= 20, ran.out());
    assertTrue(json(ran).get("design").get("chance").asDouble() >= 0.8, ran.out());
    String near = run("study", "plan", "--expected", "29").out();
    assertTrue(near.contains("too near the limit"), near);
  }

  @Test
  void theOrderIsDrawnFromTheSeedAndReadBack() throws IOException {
    String[] order = {
      "study", "order", "--pieces", "3", "--operators", "A,B", "--repeats", "2", "--seed", "7"
    };
    String csv = run(order).out();
    assertEquals(csv, run(order).out());
    assertEquals(13, csv.strip().lines().count());
    int[] value = {0};
    String filled = csv.replaceAll("(?m),$", ",V");
    while (filled.contains("V\n") || filled.contains("V\r")) {
      filled = filled.replaceFirst("V(\\r?\\n)", (value[0]++ * 7 % 5) + "$1");
    }
    Ran ran = study(filled.replaceAll("V$", "1"), "--kind", "crossed", "--json");
    assertEquals("order of measuring", json(ran).get("tests").get(1).get("name").asText());
  }

  /** The same readings once more would look like a gauge that repeats well. */
  @Test
  void aFilePutTogetherTwiceIsTold() throws IOException {
    String rows = "1,5.1\n1,5.3\n2,6.2\n2,6.1\n";
    Ran once = study("part,value\n" + rows, "--kind", "one-operator");
    assertEquals("", once.err(), once.out());
    Ran twice = study("part,value\n" + rows + rows, "--kind", "one-operator");
    assertTrue(twice.err().startsWith("Caution: lines 6 to 9 are there twice"), twice.err());
    Ran summed = study("part,value\n" + rows + "Mean,5.7\n", "--kind", "one-operator");
    assertTrue(summed.err().startsWith("line 6: Mean, 5.7 seems to sum up"), summed.err());
  }

  @ParameterizedTest
  @ValueSource(strings = {"plan", "order"})
  void theyHaveHelp(String command) {
    assertEquals(ExitCode.WELL, run("study", command, "--help").code());
  }
}
