package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.util.List;
import org.chordlog.measure.Job;
import org.chordlog.measure.Reading;
import org.chordlog.store.Some;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Pieces that ran through a gauge in a line, and the rollers they ran over, as people look at them.
 */
final class LinePageTest extends BrowserTest {
  private static final String ROLLERS = "/api/machines/three-roll%20bender/rollers";

  @TempDir static Path directory;
  private static Served served;
  private static Job job;
  private static List<Reading> pieces;

  @BeforeAll
  static void open() throws Exception {
    served = new Served(directory.resolve("data"));
    job = served.store.jobs().add(LinePieces.job(Some.job("hoops", "three-roll bender")), "tester");
    pieces = LinePieces.keep(served.store, job, 6);
  }

  @AfterAll
  static void close() {
    served.close();
  }

  /** 0.2 % of curvature by the entry roller, as the line's scenario has it. */
  @Test
  void theRollerThatRunsOutIsNamedAndRecordsOfRollersCount() throws Exception {
    JsonNode said = served.json(ROLLERS);
    assertEquals("Entry roller makes a ripple", said.at("/statement/word").asText());
    assertEquals(0.2, said.at("/rollers/0/amplitudePercent").asDouble(), 0.03);
    assertEquals(6, said.at("/pieces").asInt());
    assertTrue(said.at("/rollers/1/amplitudePercent").asDouble() < 0.1, said::toString);
    assertEquals(
        201,
        served
            .post(ROLLERS, "{\"name\": \"feeder\", \"diameterMm\": 32, \"side\": \"OUTER\"}")
            .statusCode());
    said = served.json(ROLLERS);
    assertTrue(said.at("/rollers/3/unseen").asText().contains("shows only"), said::toString);
    assertEquals(200, served.post(ROLLERS + "/removals", "{\"name\": \"feeder\"}").statusCode());
    assertEquals(3, served.json(ROLLERS).at("/rollers").size());
    var refused = served.post(ROLLERS, "{\"name\": \"x\", \"diameterMm\": 0}");
    assertEquals(400, refused.statusCode());
    assertTrue(refused.body().contains("side"), refused::body);
  }

  @Test
  void aPieceIsShownWithWhatWasFoundAlongIt() throws Exception {
    Visitor visitor = new Visitor(served, browser, "Anna");
    visitor.go("/line.html?job=" + job.id() + "&reading=" + pieces.get(1).id());
    visitor.sees("main", "Piece 2");
    visitor.sees("main", "Evaluated");
    visitor.sees("main", "by its mean");
    visitor.sees("main", "The newest pieces over one another");
    visitor.sees("table", "Piece 6");
    visitor.findsNothingGrave();
    visitor.leavesNothingOnTheConsole();
  }

  @Test
  void theMachinePageNamesTheRoller() throws Exception {
    Visitor visitor = new Visitor(served, browser, "Anna");
    visitor.go("/machine.html?machine=three-roll%20bender");
    visitor.sees("main", "Entry roller makes a ripple");
    visitor.sees("main", "drive is locked out");
    visitor.sees("main", "Ripple by wavelength");
    visitor.sees(".machine-card", "Entry roller makes a ripple");
    visitor.findsNothingGrave();
    visitor.leavesNothingOnTheConsole();
  }

  @Test
  void theJobPageChartsHowEvenItsPiecesAreAndNamesTheRoller() throws Exception {
    Visitor visitor = new Visitor(served, browser, "Anna");
    visitor.go("/job.html?job=" + job.id());
    visitor.sees("section[aria-label='Along the pieces']", "Range, % of curvature");
    visitor.sees("section[aria-label='Along the pieces']", "End less start, % of curvature");
    visitor.sees("section[aria-label='Along the pieces']", "6 of 25 points needed");
    visitor.sees("section[aria-label='Along the pieces']", "Entry roller makes a ripple");
    visitor.findsNothingGrave();
    visitor.leavesNothingOnTheConsole();
    visitor.page.executeScript(
        "const chart = document.querySelector(\"section[aria-label='Along the pieces'] .picture\");"
            + "chart.focus(); for (const key of ['End', 'Enter'])"
            + " chart.dispatchEvent(new KeyboardEvent('keydown', {key}))");
    visitor.sees("main", "Piece 6");
    visitor.sees("main", "Range of curvature");
  }
}
