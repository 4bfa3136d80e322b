package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.nio.file.Path;
import java.util.List;
import org.chordlog.Await;
import org.chordlog.measure.GaugeStudy;
import org.chordlog.measure.GaugeStudy.Kind;
import org.chordlog.study.StudyFigure;
import org.chordlog.study.StudyResult;
import org.chordlog.verdict.StudyWords;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** What the page of a complete study shows, in a real browser. */
final class StudyPageTest extends BrowserTest {
  @TempDir static Path directory;
  private static Served served;
  private DoneStudies studies;
  private Visitor visitor;

  @BeforeAll
  static void serve() {
    served = new Served(directory.resolve("data"));
  }

  @AfterAll
  static void close() {
    served.close();
  }

  @BeforeEach
  void open() {
    studies = new DoneStudies(served.store);
    visitor = new Visitor(served, browser, "Greta");
  }

  @Test
  void chartsOfPiecesAreReadAsATableAndDrawnAnewForAScreenThatWasTurned() throws Exception {
    visitor.go("/study.html?id=" + done(Kind.CROSSED).id());
    visitor.counts(".picture svg", 2);
    visitor.sees("section[aria-label='Charts']", "Where the scatter comes from");
    visitor.press("Show as table");
    visitor.sees("section[aria-label='Charts'] table", "EV, repeatability: ");
    visitor.sees("#study", "Report, PDF");
    visitor.findsNothingGrave();
    visitor.page.executeScript("dispatchEvent(new Event('beforeprint'))");
    visitor.counts("details:not([open])", 0); // what is below a heading is printed with it
    visitor.page.executeScript("dispatchEvent(new Event('afterprint'))");
    visitor.looksAt(390, 844);
    Await.until(
        () ->
            Boolean.TRUE.equals(
                visitor.page.executeScript(
                    "return [...document.querySelectorAll('.picture svg')]"
                        + ".every((svg) => svg.viewBox.baseVal.width < 400)")));
    visitor.counts(".picture svg", 2);
    visitor.leavesNothingOnTheConsole();
  }

  private GaugeStudy done(Kind kind) {
    return switch (kind) {
      case CROSSED -> studies.onPieces(kind, 5, List.of(), List.of("Ann", "Bo", "Cy"));
      case SPLIT -> studies.onPieces(kind, 3, List.of("start", "end"), List.of("Ann", "Bo"));
      case NESTED, LOTS -> studies.onPieces(kind, 6, List.of(), List.of("Ann", "Bo"));
      case ONE_OPERATOR -> studies.onPieces(kind, 6, List.of(), List.of("Ann"));
      case PLACING ->
          studies.onPieces(kind, 5, List.of(GaugeStudy.BY_EYE, GaugeStudy.ON_MARK), List.of("Ann"));
      case BIAS, TYPE1 -> studies.onMasters(kind, 1, 12);
      case LINEARITY -> studies.onMasters(kind, 4, 5);
      case STABILITY -> studies.overDays(4, 3);
    };
  }

  /** On a telephone too, with the very figures that the study has. */
  @ParameterizedTest
  @EnumSource(Kind.class)
  void everyKindShowsWhatItFound(Kind kind) throws Exception {
    GaugeStudy study = done(kind);
    StudyResult result = new StudyEvaluation(served.store, study).result();
    visitor.looksAt(390, 844);
    visitor.go("/study.html?id=" + study.id());
    String found = "section[aria-label='What it found']";
    String verdict = StudyWords.of(result.conclusion().verdict());
    visitor.sees(found, verdict);
    String first = visitor.text(found + " > p");
    assertEquals(first.indexOf(verdict), first.lastIndexOf(verdict), "said once: " + first);
    assertFalse(result.mainFigures().isEmpty());
    for (StudyFigure figure : result.mainFigures()) {
      visitor.sees(found + " table", figure.words().toString().substring(1));
    }
    for (String caution : result.cautions()) {
      visitor.sees(found, caution);
    }
    visitor.sees("section[aria-label='Plan']", StudyWords.of(kind));
    visitor.sees(
        "section[aria-label='Measurements']", "All " + study.design().steps() + " measurements");
    int charts = served.json("/api/studies/" + study.id() + "/charts").size();
    visitor.counts(".picture svg", charts);
    visitor.findsNothingGrave();
    visitor.leavesNothingOnTheConsole();
  }

  @Test
  void theMeasuringProcessIsToldFromStudiesOnPiecesAndMasters() throws Exception {
    GaugeStudy study = done(Kind.CROSSED);
    GaugeStudy unused = done(Kind.TYPE1);
    visitor.go("/study.html?id=" + study.id());
    String process = "section[aria-label='The measuring process']";
    visitor.sees(process, "ISO 22514-7");
    visitor.sees(process, "2·U of the measuring process over the tolerance");
    visitor.sees("#study", "By averages and ranges");
    visitor.findsNothingGrave();
    visitor.leavesNothingOnTheConsole();
  }

  @Test
  void biasOfMastersIsDrawnWithItsBand() throws Exception {
    GaugeStudy study = studies.onMasters(Kind.LINEARITY, 4, 5);
    visitor.go("/study.html?id=" + study.id());
    visitor.sees("section[aria-label='Charts']", "Bias on masters");
    visitor.counts(".picture svg", 1);
    visitor.findsNothingGrave();
    assertEquals(1, visitor.count("section[aria-label='Charts'] h3"));
    visitor.leavesNothingOnTheConsole();
  }
}
