package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import java.util.List;
import org.chordlog.Await;
import org.chordlog.measure.GaugeStudy;
import org.chordlog.measure.GaugeStudy.Kind;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the page of a complete study shows, in a real browser. */
final class StudyPageTest extends BrowserTest {
  @TempDir Path directory;
  private Served served;
  private DoneStudies studies;
  private Visitor visitor;

  @BeforeEach
  void open() {
    served = new Served(directory.resolve("data"));
    studies = new DoneStudies(served.store);
    visitor = new Visitor(served, browser, "Greta");
  }

  @AfterEach
  void close() {
    served.close();
  }

  @Test
  void chartsOfPiecesAreDrawnAndReadAsATable() throws Exception {
    GaugeStudy study = studies.onPieces(Kind.CROSSED, 5, List.of(), List.of("Ann", "Bo", "Cy"));
    visitor.go("/study.html?id=" + study.id());
    Await.until(() -> visitor.count(".picture svg") == 2);
    visitor.sees("section[aria-label='Charts']", "Where the scatter comes from");
    visitor.press("Show as table");
    visitor.sees("section[aria-label='Charts'] table", "EV, repeatability: ");
    visitor.sees("#study", "Report, PDF");
    visitor.findsNothingGrave();
    visitor.leavesNothingOnTheConsole();
  }

  @Test
  void biasOfMastersIsDrawnWithItsBand() throws Exception {
    GaugeStudy study = studies.onMasters(Kind.LINEARITY, 4, 5);
    visitor.go("/study.html?id=" + study.id());
    visitor.sees("section[aria-label='Charts']", "Bias on masters");
    Await.until(() -> visitor.count(".picture svg") == 1);
    visitor.findsNothingGrave();
    assertEquals(1, visitor.count("section[aria-label='Charts'] h3"));
    visitor.leavesNothingOnTheConsole();
  }
}
