package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.lowagie.text.pdf.PdfReader;
import com.lowagie.text.pdf.parser.PdfTextExtractor;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import org.chordlog.chart.ViewUnit;
import org.chordlog.measure.Exclusion;
import org.chordlog.measure.Job;
import org.chordlog.measure.Reading;
import org.chordlog.monitor.Monitor;
import org.chordlog.report.JobReport;
import org.chordlog.report.PdfReport;
import org.chordlog.stats.AlongStatistics;
import org.chordlog.store.Some;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The printed report of a job whose pieces ran through a gauge in a line. */
final class LineReportTest {
  @TempDir Path directory;
  private Served served;

  @BeforeEach
  void open() throws Exception {
    served = new Served(directory.resolve("data"));
  }

  @AfterEach
  void close() {
    served.close();
  }

  private Job line(String name) {
    return served.store.jobs().add(LinePieces.job(Some.job(name, "three-roll bender")), "tester");
  }

  private String printed(Job job) throws IOException {
    JobReport report =
        new JobReports(served.store, served.monitor)
            .of(
                job.id(),
                new JobReport.Printing(Instant.EPOCH, ZoneOffset.UTC, ViewUnit.MM, false));
    byte[] pdf = PdfReport.write(report);
    Path pictures = Files.createDirectories(Path.of("target", "pictures"));
    Files.write(pictures.resolve("report-" + job.name() + ".pdf"), pdf);
    StringBuilder all = new StringBuilder();
    try (PdfReader reader = new PdfReader(pdf)) {
      PdfTextExtractor text = new PdfTextExtractor(reader);
      for (int page = 1; page <= reader.getNumberOfPages(); page++) {
        all.append(text.getTextFromPage(page));
      }
    }
    return bare(all.toString());
  }

  /** Lines break anywhere. */
  private static String bare(String text) {
    return text.replaceAll("\\s+", "");
  }

  private static void says(String printed, String words) {
    assertTrue(printed.contains(bare(words)), () -> words + " is missing in\n" + printed);
  }

  @Test
  void namesTheRollerInTheWordsOfThePage() throws Exception {
    Job job = line("hoops of a line");
    LinePieces.keep(served.store, job, 6);
    JsonNode said = served.json("/api/jobs/" + job.id() + "/rollers");
    String printed = printed(job);
    assertEquals("Entry roller makes a ripple", said.at("/statement/word").asText());
    for (String part : new String[] {"word", "reason", "advice"}) {
      String words = said.at("/statement/" + part).asText();
      assertFalse(words.isBlank(), part);
      says(printed, words);
    }
    for (JsonNode each : served.json("/api/jobs/" + job.id() + "/along")) {
      says(printed, "Along the pieces · " + each.at("/title").asText() + ", % of curvature");
      says(printed, "Individuals and moving range of " + each.at("/title").asText());
      says(printed, each.at("/statement/word").asText() + each.at("/statement/reason").asText());
    }
    says(printed, "entry roller 180 outer face, driven 565");
    says(printed, "below 0.001");
    says(printed, "Ripple by wavelength");
    says(printed, "Ripple of each roller over pieces");
  }

  /** Pieces of another job of the same machine, and excluded ones, tell nothing of this job. */
  @Test
  void looksAtThePiecesOfThisJobAlone() throws Exception {
    Job first = line("first");
    for (Reading reading : LinePieces.keep(served.store, first, 3)) {
      if (reading.piece() < 3) {
        var unused =
            served
                .store
                .readings()
                .add(new Exclusion(0, reading.id(), true, "bridge hung", 1, "tester"));
      }
    }
    Job second = line("second");
    assertEquals(1, served.json("/api/jobs/" + first.id() + "/rollers").at("/pieces").asInt());
    JsonNode none = served.json("/api/jobs/" + second.id() + "/rollers");
    assertEquals(0, none.at("/pieces").asInt());
    assertEquals("Rollers not judged", none.at("/statement/word").asText());
    assertFalse(printed(second).contains(bare("Does a roller run out?")));
    says(printed(first), "on the newest piece.");
  }

  /** Each point is the figure of that piece, also after all is computed anew. */
  @Test
  void rangeAndTrendOfEachPieceAreChartedAsThePieceSaysThem() throws Exception {
    Job job = line("even");
    List<Reading> pieces = LinePieces.keep(served.store, job, 3);
    String along = "/api/jobs/" + job.id() + "/along";
    assertEquals(2, served.json(along).size());
    assertEquals(3, served.json(along).at("/0/pieces").asInt());
    for (String measure : List.of("range", "trend")) {
      JsonNode places = served.json(along + "/" + measure + "/chart").at("/places");
      for (int i = 0; i < pieces.size(); i++) {
        JsonNode point = places.get(i).at("/point");
        long reading = pieces.get(i).id();
        assertEquals(reading, point.at("/lastReadingId").asLong());
        assertEquals(
            served
                .json("/api/readings/" + reading + "/profile")
                .at("/along/" + measure + "Percent")
                .asDouble(),
            point.at("/value").asDouble());
      }
    }
    byte[] before = served.monitor.readAlong(job.id(), AlongStatistics::checkpoint);
    try (Monitor again = new Monitor(served.store)) {
      assertArrayEquals(before, again.readAlong(job.id(), AlongStatistics::checkpoint));
    }
  }

  /** Page, API and report; the radius at the same reading has signals of its own. */
  @Test
  void theCauseOfASignalAlongThePiecesIsRecordedAndHoldsItsVerdictNoLonger() throws Exception {
    Job job = line("wandering");
    LinePieces.keep(served.store, job, 30, 8);
    String path = "/api/jobs/" + job.id();
    JsonNode range = served.json(path + "/along").at("/0");
    assertEquals("Not in control", range.at("/statement/word").asText());
    assertTrue(range.at("/spells/0/now").asBoolean(), range::toString);
    String ofRadius = served.json(path + "/chart-facts").at("/spells").toString();
    for (JsonNode spell : range.at("/spells")) {
      String body =
          String.format(
              "{\"characteristic\": \"%s\", \"chart\": \"%s\", \"readingId\": %d,"
                  + " \"cause\": \"worn straightener\", \"action\": \"changed\"}",
              range.at("/characteristic").asText(),
              spell.at("/chart").asText(),
              spell.at("/readingId").asLong());
      assertEquals(201, served.post(path + "/signal-answers", body).statusCode());
    }
    JsonNode answered = served.json(path + "/along").at("/0");
    assertNotEquals("Not in control", answered.at("/statement/word").asText(), answered::toString);
    assertTrue(answered.at("/spells/0/answered").asBoolean(), answered::toString);
    assertEquals(ofRadius, served.json(path + "/chart-facts").at("/spells").toString());
    says(printed(job), "Cause of the signal at piece 38: worn straightener; changed (");
  }

  @Test
  void aJobWithoutPiecesThatRanThroughHasNoSuchChart() throws Exception {
    Job job = line("none");
    String along = "/api/jobs/" + job.id() + "/along";
    assertEquals("Too early to tell", served.json(along).at("/0/statement/word").asText());
    assertEquals(404, served.get(along + "/range/chart").statusCode());
    assertEquals(400, served.get(along + "/width/chart").statusCode());
  }
}
