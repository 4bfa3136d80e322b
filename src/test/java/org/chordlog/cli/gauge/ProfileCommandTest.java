package org.chordlog.cli.gauge;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import org.chordlog.cli.Chordlog;
import org.chordlog.cli.common.ExitCode;
import org.chordlog.simulator.LineErrors;
import org.chordlog.simulator.LineScenario;
import org.chordlog.simulator.LineStream;
import org.chordlog.simulator.LineTruth;
import org.chordlog.simulator.ScenarioFile;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;

final class ProfileCommandTest {
  private static final String OPTIONS =
      " --span 200 --section tube:60.3x3.2 --specified-face centreline --resolution 0.001"
          + " --permissible-error 0.003";

  @TempDir private static Path folder;
  private static Path stream;
  private static LineTruth truth;
  private static List<String> rows = List.of();

  private record Run(int code, String out, String err) {}

  private static Run run(String line) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    CommandLine chordlog =
        Chordlog.commandLine().setOut(new PrintWriter(out)).setErr(new PrintWriter(err));
    int code = chordlog.execute(line.split(" "));
    return new Run(code, out.toString(), err.toString());
  }

  /** The first piece of the line that comes with the program. */
  @BeforeAll
  static void record() throws IOException {
    LineScenario scenario = ScenarioFile.readLine(ScenarioFile.LINE);
    LineStream line = new LineStream(scenario, LineErrors.NONE, 5);
    truth = line.truths().get(0);
    List<String> recorded = new ArrayList<>();
    do {
      line.next();
      recorded.add(
          String.format(
              Locale.ROOT,
              "%.3f,%.3f,%.1f,%d",
              line.seconds(),
              line.depthNm() / 1e6,
              line.lengthNm() / 1e6,
              line.counts()));
    } while (line.seconds() < truth.leftSeconds() + 2);
    rows = List.copyOf(recorded);
    stream = file("stream.csv", "time_s,depth_mm,length_mm,count", rows);
  }

  private static Path file(String name, String header, List<String> rows) throws IOException {
    Path file = folder.resolve(name);
    Files.write(file, rows);
    Files.writeString(file, header + "\n" + Files.readString(file));
    return file;
  }

  private static JsonNode json(Run run) throws IOException {
    assertEquals("", run.err());
    return new ObjectMapper().readTree(run.out());
  }

  @Test
  void aPieceInWords() {
    Run run =
        run("profile " + stream + OPTIONS + " --lower 1780 --upper 1820 --roller entry:180:outer");
    assertEquals(ExitCode.WELL, run.code(), run.toString());
    for (String part :
        List.of(
            "Piece 1 (rows",
            "mean radius",
            "each place is a mean over 200 mm",
            "Good",
            "noise alone would make",
            "chord",
            "the ripple of entry stands out",
            "Twice a turn over 1 piece: no roller's ripple stands out")) {
      assertTrue(run.out().contains(part), part + " in " + run.out());
    }
  }

  @Test
  void aPieceAsJsonHasTheTruthInItsInterval() throws IOException {
    String line = "profile " + stream + OPTIONS + " --roller entry:180:outer --json";
    JsonNode answer = json(run(line));
    JsonNode pieces = answer.at("/pieces");
    assertEquals(1, pieces.size());
    JsonNode piece = pieces.get(0);
    double from = piece.at("/evaluatedFromMm").asDouble();
    double to = piece.at("/evaluatedToMm").asDouble();
    double radius = 1 / truth.meanShownPerMm(from + 3, to + 3) - 30.15;
    assertTrue(piece.at("/lowerMm").asDouble() < radius, piece.toString());
    assertTrue(piece.at("/upperMm").asDouble() > radius, piece.toString());
    assertEquals(radius, piece.at("/radiusMm").asDouble(), 0.6);
    assertTrue(from >= truth.idealFromMm() - 3 && to <= truth.idealToMm(), from + " to " + to);
    assertEquals("entry", piece.at("/rollers/0/name").asText());
    assertTrue(piece.at("/rollers/0/named").asBoolean());
    assertEquals(0.2, piece.at("/rollers/0/amplitudePercent").asDouble(), 0.05);
    JsonNode twice = answer.at("/rollersTwiceATurn");
    assertEquals(1, twice.at("/pieces").asInt());
    assertFalse(twice.at("/rollers/0/named").asBoolean());
    assertEquals(
        piece.at("/rollers/0/wavelengthMm").asDouble() / 2,
        twice.at("/rollers/0/wavelengthMm").asDouble(),
        1e-9);
    assertTrue(piece.at("/places").size() > 90);
    assertTrue(piece.at("/refused").isNull());
  }

  @Test
  void countsGiveTheSameAsTheirLengths() throws IOException {
    List<String> counts =
        rows.stream().map(row -> row.replaceFirst(",[^,]*,([^,]*)$", ",$1")).toList();
    Path file = file("counts.csv", "time_s,depth_mm,count", counts);
    JsonNode byCounts = json(run("profile " + file + OPTIONS + " --mm-per-count 0.1 --json"));
    assertEquals(json(run("profile " + stream + OPTIONS + " --json")), byCounts);
    List<String> wrapped = new ArrayList<>();
    for (String row : counts) {
      int comma = row.lastIndexOf(',');
      wrapped.add(
          row.substring(0, comma + 1)
              + (-Long.parseLong(row.substring(comma + 1)) + 60_000 & 0xFFFF));
    }
    Path over = file("wrapped.csv", "time_s,depth_mm,count", wrapped);
    String options = " --mm-per-count 0.1 --counter-bits 16 --reversed --json";
    JsonNode again = json(run("profile " + over + OPTIONS + options));
    assertEquals(
        byCounts.at("/pieces/0/radiusMm").asDouble(),
        again.at("/pieces/0/radiusMm").asDouble(),
        1e-6);
  }

  @Test
  void aStatedFeedNeedsThePiecesLength() throws IOException {
    List<String> bare = rows.stream().map(row -> row.replaceFirst(",[^,]*,[^,]*$", "")).toList();
    Path file = file("bare.csv", "time_s,depth_mm", bare);
    refused("profile " + file + OPTIONS, "has no column length_mm");
    Run without = run("profile " + file + OPTIONS + " --feed 100");
    assertEquals(ExitCode.FAULT, without.code());
    assertTrue(without.out().contains("must be stated too"), without.out());
    Run with = run("profile " + file + OPTIONS + " --feed 100 --piece 6000");
    assertEquals(ExitCode.WELL, with.code(), with.toString());
    assertTrue(with.out().contains("note: by a stated feed"), with.out());
  }

  private static void refused(String line, String... why) {
    Run run = run(line);
    assertEquals(ExitCode.BAD_INPUT, run.code(), run.toString());
    for (String part : why) {
      assertTrue(run.err().contains(part), part + " in " + run.err());
    }
    assertFalse(run.err().contains("\tat "), run.err());
  }

  private static Path changed(String name, int row, String to) throws IOException {
    List<String> others = new ArrayList<>(rows);
    others.set(row, to);
    return file(name, "time_s,depth_mm,length_mm,count", others);
  }

  @Test
  void badInputIsNamedWithItsRow() throws IOException {
    refused("profile " + changed("text.csv", 40, "0.800,what,1,1") + OPTIONS, "'what' in row 42");
    refused(
        "profile " + changed("time.csv", 40, "0.780,-5,1,1") + OPTIONS,
        "time_s: '0.780' in row 42",
        "is not after the row before");
    refused(
        "profile " + changed("back.csv", 900, "18.000,0,-500,1") + OPTIONS + " --one-way",
        "length_mm: '-500' in row 902",
        "runs backwards");
    Path nameless = file("nameless.csv", "t,depth_mm,length_mm,count", rows);
    refused("profile " + nameless + OPTIONS, "time_s is not a column", "depth_mm");
    refused("profile " + stream + OPTIONS + " --roller entry:180", "is not a roller");
    refused("profile " + stream + OPTIONS + " --roller entry:180:top", "is on no face");
    refused("profile " + stream + OPTIONS + " --counter-bits 8", "bits");
    refused("profile " + folder.resolve("none.csv") + OPTIONS, "does not exist");
    Path headed = file("headed.csv", "time_s,depth_mm,length_mm", List.of());
    refused("profile " + headed + OPTIONS, "has no row below its heading");
  }

  @Test
  void aLengthThatJumpsOrStandsStillGivesNoResult() throws IOException {
    List<String> jumped = new ArrayList<>();
    List<String> dead = new ArrayList<>();
    for (int i = 0; i < rows.size(); i++) {
      String[] cells = rows.get(i).split(",", -1);
      double length = Double.parseDouble(cells[2]);
      String depth = cells[0] + "," + cells[1] + ",";
      jumped.add(depth + (i > 1500 ? length + 900 : length));
      dead.add(depth + Math.min(length, 2000));
    }
    String header = "time_s,depth_mm,length_mm";
    Run jump = run("profile " + file("jump.csv", header, jumped) + OPTIONS);
    assertEquals(ExitCode.FAULT, jump.code());
    assertTrue(
        Pattern.compile("The length jumped by 90\\d mm at [23]\\d{3} mm, more than")
            .matcher(jump.out())
            .find(),
        jump.out());
    Run still = run("profile " + file("dead.csv", header, dead) + OPTIONS);
    assertEquals(ExitCode.FAULT, still.code());
    assertTrue(still.out().contains("while the length stood still at 199"), still.out());
  }

  @Test
  void whatIsCutOffGivesNoResult() throws IOException {
    String header = "time_s,depth_mm,length_mm,count";
    Run end = run("profile " + file("end.csv", header, rows.subList(0, 1500)) + OPTIONS);
    assertTrue(end.out().contains("broke off in the middle of the piece, at "), end.out());
    Run middle = run("profile " + file("middle.csv", header, rows.subList(1000, 2000)) + OPTIONS);
    assertEquals(ExitCode.BAD_INPUT, middle.code());
    assertTrue(middle.err().contains("never shows free air"), middle.err());
    Run start =
        run("profile " + file("start.csv", header, rows.subList(1000, rows.size())) + OPTIONS);
    assertEquals(ExitCode.FAULT, start.code());
    assertTrue(start.out().contains("No piece ran through"), start.out());
  }

  @Test
  void theDelayIsFoundFromOnePieceForthAndBack() throws IOException {
    String yaml =
        Files.readString(Path.of("demo-data", ScenarioFile.LINE + ".yaml"))
            .replace("passShares: [1]", "passShares: [1, 1]")
            .replace("lengthMm: 6000", "lengthMm: 2000")
            .replace("delayMs: 10", "delayMs: 30")
            .replace("sdPercent: 1.7", "sdPercent: 0");
    Path scenario = folder.resolve("forth-and-back.yaml");
    Files.writeString(scenario, yaml);
    LineStream line =
        new LineStream(ScenarioFile.readLine(scenario.toString()), LineErrors.NONE, 5);
    List<String> recorded = new ArrayList<>();
    for (int i = 0; i < 45 * 50; i++) {
      line.next();
      recorded.add(
          String.format(
              Locale.ROOT,
              "%.3f,%.3f,%.1f",
              line.seconds(),
              line.depthNm() / 1e6,
              line.lengthNm() / 1e6));
    }
    Path file = file("forth.csv", "time_s,depth_mm,length_mm", recorded);
    JsonNode delay = json(run("profile " + file + OPTIONS + " --find-delay --json"));
    assertEquals(30, delay.at("/ms").asDouble(), 6, delay.toString());
    assertTrue(run("profile " + file + OPTIONS + " --find-delay").out().startsWith("Depths come"));
  }
}
