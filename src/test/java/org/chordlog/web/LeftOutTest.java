package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.lowagie.text.pdf.PdfReader;
import com.lowagie.text.pdf.parser.PdfTextExtractor;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import org.chordlog.chart.ViewUnit;
import org.chordlog.measure.Exclusion;
import org.chordlog.measure.Job;
import org.chordlog.measure.Reading;
import org.chordlog.report.JobReport;
import org.chordlog.report.PdfReport;
import org.chordlog.store.Some;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a job's report and page say of readings and positions that are not in its figures. */
final class LeftOutTest {
  @TempDir Path directory;
  private Served served;
  private Job job;
  private long setUp;
  private long sequence;

  @BeforeEach
  void open() {
    served = new Served(directory);
    job = served.job();
    setUp = served.store.readings().keep(Some.setUp(served.store.gauges().bridges().get(0)));
  }

  @AfterEach
  void close() {
    served.close();
  }

  /** One that conforms; each is taken four seconds after that before it. */
  private Reading measured(int piece, String position) {
    sequence += sequence % 7 == 6 ? 2 : 1; // every seventh of these is undecided
    Reading any = Some.reading("A", sequence, job.id(), setUp);
    return served
        .store
        .readings()
        .append(
            new Reading(
                0,
                any.source(),
                new Reading.Place(job.id(), piece, position),
                any.measured(),
                any.result(),
                any.circumstances()))
        .join();
  }

  private void piece(int number, String... positions) {
    for (String position : positions) {
      measured(number, position);
    }
  }

  private void exclude(Reading reading, String reason) {
    var unused =
        served.store.readings().add(new Exclusion(0, reading.id(), true, reason, 1, "tester"));
  }

  private JobReport report(boolean withReadings) {
    return new JobReports(served.store, served.monitor)
        .of(
            job.id(),
            new JobReport.Printing(Instant.EPOCH, ZoneOffset.UTC, ViewUnit.MM, withReadings));
  }

  private String firstPage(boolean withReadings) throws IOException {
    byte[] pdf = PdfReport.write(report(withReadings));
    Path pictures = Files.createDirectories(Path.of("target", "pictures"));
    Files.write(pictures.resolve("report-left-out.pdf"), pdf);
    try (PdfReader reader = new PdfReader(pdf)) {
      return new PdfTextExtractor(reader).getTextFromPage(1).replaceAll("\\s+", " ");
    }
  }

  private static String time(Reading reading) {
    return Instant.EPOCH
        .plus(reading.wallMicros(), ChronoUnit.MICROS)
        .truncatedTo(ChronoUnit.SECONDS)
        .toString()
        .replace('T', ' ')
        .replace("Z", "");
  }

  private static void says(String page, String words) {
    assertTrue(page.contains(words), () -> words + " is missing in\n" + page);
  }

  /** A lot that nothing was measured of is not certified. */
  @Test
  void theCertificateNamesTheLotsThatWereMeasured() throws Exception {
    served.post("/api/jobs/" + job.id() + "/events", lot("lot 2"));
    says(firstPage(false), "Material lots lot 2 ");
    measured(1, "start"); // of a time before that event: it was told late
    served.post("/api/jobs/" + job.id() + "/events", lot("lot 3"));
    says(firstPage(false), "Material lots lot 2 Machine");
  }

  private static String lot(String name) {
    return "{\"kind\": \"MATERIAL_LOT\", \"materialLot\": \"%s\"}".formatted(name);
  }

  private JsonNode leftOut() throws Exception {
    return served.json("/api/jobs/" + job.id() + "/left-out");
  }

  @Test
  void pageOneSaysHowManyReadingsAreExcludedAndShowsTheNewestThatCounts() throws Exception {
    piece(1, "start", "middle", "end");
    Reading counts = measured(2, "start");
    exclude(measured(2, "middle"), "bridge slipped");
    exclude(measured(2, "end"), "bridge slipped");
    exclude(measured(3, "start"), "wrong piece");
    JobReport report = report(true);
    assertEquals(counts.id(), report.measured().newest().orElseThrow().id());
    String page = firstPage(true);
    says(
        page,
        "! 3 of 7 readings are excluded and count in no figure; they are listed under Readings with"
            + " their reasons.");
    says(
        page,
        "Of 3 pieces measured, 1 without a reading that counts (piece 3), 1 without a reading at"
            + " every position.");
    says(page, "Readings that count 4");
    says(page, "Readings excluded 3");
    says(page, "Last reading that counts " + time(counts));
    says(page, "Newest reading that counts, 95 % interval");
    says(page, "! Piece 2 has no reading that counts at middle, end.");
    String certificate = firstPage(false);
    says(
        certificate,
        "! 3 of 7 readings are excluded and count in no figure: 2 × “bridge slipped”, 1 × “wrong"
            + " piece”.");
    says(certificate, "Released by");
  }

  /** The budget is that of the newest reading that counts, and marks are of those that count. */
  @Test
  void gaugeAndCautionsAreOfReadingsThatCount() throws Exception {
    piece(1, "start", "middle", "end");
    JobReport before = report(true);
    for (int i = 0; i < 8; i++) { // the eleventh is marked
      exclude(measured(2, "start"), "trial");
    }
    JobReport after = report(true);
    assertEquals(before.gauge().uncertainty(), after.gauge().uncertainty());
    String page = firstPage(true);
    assertFalse(page.contains("1 reading, marked: zero too old"), page);
  }

  @Test
  void pagesOfAJobWithoutAReadingThatCountsAreMadeAllTheSame() throws Exception {
    exclude(measured(1, "start"), "trial");
    says(firstPage(true), "1 piece measured, none with a reading that counts.");
    says(firstPage(true), "! 1 of 1 reading is excluded and counts in no figure");
  }

  @Test
  void aPlannedPositionThatWasNotMeasuredIsNamed() throws Exception {
    piece(1, "start", "middle");
    piece(2, "start", "middle", "end");
    String page = firstPage(true);
    says(
        page,
        "All 2 pieces measured are within the limits, 1 of them without a reading at every"
            + " position.");
    says(page, "! Piece 1 was not measured at end.");
    JsonNode said = leftOut();
    assertEquals("[\"Piece 1 was not measured at end.\"]", said.get("words").toString());
    assertEquals(1, said.get("incompletePieces").asInt());
  }

  /** The newest piece of an open job may be at the gauge; that of a closed one may not. */
  @Test
  void thePieceBeingMeasuredIsNoFaultUntilTheJobIsClosed() throws Exception {
    piece(1, "start", "middle", "end");
    piece(2, "start");
    String open = firstPage(true);
    says(open, "All 2 pieces measured are within the limits.");
    says(open, "The job goes on. So far: Piece 2 was not measured at middle, end.");
    assertEquals("[]", leftOut().get("words").toString());
    assertEquals(200, served.post("/api/jobs/" + job.id() + "/close", "{}").statusCode());
    says(firstPage(true), "! Piece 2 was not measured at middle, end.");
    assertEquals(
        "[\"Piece 2 was not measured at middle, end.\"]", leftOut().get("words").toString());
  }

  @Test
  void thePageSaysHowManyReadingsAreExcluded() throws Exception {
    piece(1, "start", "middle", "end");
    exclude(measured(1, "end"), "trial");
    assertEquals(
        "[\"1 of 4 readings is excluded and counts in no figure of this job.\"]",
        leftOut().get("words").toString());
  }
}
