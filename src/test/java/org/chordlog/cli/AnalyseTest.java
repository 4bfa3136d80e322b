package org.chordlog.cli;

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
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import picocli.CommandLine;

/** The command on real files. */
final class AnalyseTest {
  @TempDir private Path folder;

  private record Ran(int code, String out, String err) {}

  private Ran run(String content, String... options) throws IOException {
    Path file = Files.writeString(folder.resolve("data.csv"), content);
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    CommandLine line =
        Chordlog.commandLine().setOut(new PrintWriter(out)).setErr(new PrintWriter(err));
    List<String> arguments = new ArrayList<>(List.of("analyse", file.toString()));
    arguments.addAll(List.of(options));
    int code = line.execute(arguments.toArray(String[]::new));
    return new Ran(code, out.toString(), err.toString());
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
    assertEquals(Chordlog.WELL, ran.code(), ran.err());
    JsonNode json = JsonMapper.builder().build().readTree(ran.out());
    assertEquals(4, json.get("count").asLong());
    assertEquals("[5,6]", json.get("rowsLeftOut").toString());
    JsonNode mean = figure(json, "mean");
    assertEquals(10.05, mean.get("value").asDouble(), 1e-12);
    assertTrue(mean.get("lower").asDouble() < 10.05);
    assertFalse(mean.get("method").asText().isEmpty());
    assertFalse(figure(json, "Ppk").get("source").asText().isEmpty());
    assertEquals("INDIVIDUALS", json.get("charts").get(0).get("kind").asText());
  }

  private static JsonNode figure(JsonNode json, String name) {
    for (JsonNode figure : json.get("figures")) {
      if (figure.get("name").asText().equals(name)) {
        return figure;
      }
    }
    throw new AssertionError(name);
  }

  @Test
  void textTellsSignalsAndExitCodeSaysSo() throws IOException {
    Ran ran = run("value\n" + "5\n6\n".repeat(20) + "30\n", "--usl", "20", "--tests", "1");
    assertEquals(Chordlog.FAULT, ran.code());
    assertTrue(ran.out().contains("point 41 (30.00000) breaks test 1"), ran.out());
    assertTrue(ran.out().contains("Caution: One specification limit"), ran.out());
  }

  @Test
  void subgroupsBySizeAndByColumn() throws IOException {
    Ran sized = run("1\n2\n3\n2\n3\n1\n2", "--subgroup", "3");
    assertTrue(sized.out().contains("Chart MEAN, 2 points"), sized.out());
    assertTrue(sized.out().contains("1 reading waits"), sized.out());
    Ran grouped =
        run("p,v\na,1\na,2\nb,2\nb,3\nb,1\nc,1", "--column", "v", "--subgroup-column", "p");
    assertTrue(grouped.out().contains("Chart MEAN, 2 points"), grouped.out());
  }

  @ParameterizedTest
  @CsvSource({
    "--lsl 5 --usl 4, lowerSpecificationLimit",
    "--lsl x, --lsl",
    "--subgroup 26, --subgroup",
    "--tests 9, --tests",
    "--column nope, --column"
  })
  void badInputNamesTheField(String options, String field) throws IOException {
    Ran ran = run("value\n1\n2\n", options.split(" ", -1));
    assertEquals(Chordlog.BAD_INPUT, ran.code());
    assertTrue(ran.err().startsWith(field), ran.err());
    assertFalse(ran.err().contains("\tat "));
  }

  @Test
  void missingAndEmptyFilesAreBadInput() throws IOException {
    assertEquals(Chordlog.BAD_INPUT, run("").code());
    assertEquals(Chordlog.BAD_INPUT, Chordlog.run("analyse", folder.resolve("none").toString()));
  }

  @Test
  void noNumbersAtAll() throws IOException {
    Ran ran = run("value\nNaN\nx\n", "--lsl", "1");
    assertEquals(Chordlog.WELL, ran.code(), ran.err());
    assertTrue(ran.out().contains("There are no readings."), ran.out());
  }
}
