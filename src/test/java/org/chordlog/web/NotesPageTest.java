package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Objects;
import org.chordlog.Await;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Short messages: they cover nothing that is read or pressed, and go when the page has gone on. */
final class NotesPageTest extends OperatorTest {
  private static final String LONG =
      "The flat is 0.833 mm higher over free air than at the last zero: is this really the flat?"
          + " Lift the bridge and set zero again, on the flat.";

  private void said(String words, String kind) throws Exception {
    operator.page.executeScript(
        "const module = document.querySelector('script[type=module]').src;"
            + "import(new URL('notes.js', module)).then(to => to.note(...arguments))",
        words,
        kind);
    operator.counts(".note", 1);
  }

  @ParameterizedTest
  @CsvSource({"1280, 900", "800, 1280", "390, 844", "844, 390", "335, 640"})
  void noFigureOfTheInstrumentIsCovered(int width, int height) throws Exception {
    operator.looksAt(width, height);
    operator.go(STATION);
    operator.sees("#freshness", "Live");
    said(LONG, "bad");
    String gap =
        "const px = (part, side) => document.querySelector(part).getBoundingClientRect()[side];"
            + "return px('.instrument', 'top') - px('.notes', 'bottom')";
    Await.until(() -> operator.number(gap) >= 0, () -> operator.number(gap) + " px");
    operator.page.executeScript("scrollTo(0, 60)");
    Await.until(() -> operator.number(gap) >= 0, () -> operator.number(gap) + " px when scrolled");
  }

  @Test
  void noButtonOfADialogIsCovered() throws Exception {
    operator.go(STATION);
    operator.sees("#freshness", "Live");
    said("It went well.", "good");
    operator.press("More");
    operator.counts(".note", 0);
    said("There is no room.", "bad");
    assertEquals(0, operator.count(".notes:popover-open"));
    operator.press("Cancel");
    operator.counts(".notes:popover-open", 1);
    operator.sees(".note", "There is no room.");
  }

  @Test
  void aMessageGoesWithTheNextPiece() throws Exception {
    operator.go(STATION);
    operator.sees("#freshness", "Live");
    touch(2.733, 1);
    operator.press("Undo");
    operator.press("The zero was wrong");
    operator.sees(".note", "is undone");
    Object said = Objects.requireNonNull(operator.page.executeScript("return performance.now()"));
    operator.sees(".next", "Measure piece 1, start");
    assertTrue(operator.text(".note").contains("is undone"));
    Await.until(() -> operator.number("return performance.now() - arguments[0]", said) > 1_600);
    touch(2.733, 2);
    operator.counts(".note", 0);
  }
}
