package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import org.chordlog.Await;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.interactions.Actions;

/** What the operator sees and reaches, task by task. */
final class OperatorPagesTest extends OperatorTest {

  @Test
  void seesTheTargetThatSomebodyElseHasChanged() throws Exception {
    operator.go(STATION);
    operator.sees(".part:first-child .note-line", "target 1800 mm");
    retarget();
    operator.sees(".part:first-child .note-line", "target 1805 mm");
  }

  /** Events are told to nobody who does not look. */
  @Test
  void seesWhatWasChangedWhileThePageWasOutOfSight() throws Exception {
    operator.go(STATION);
    operator.sees(".part:first-child .note-line", "target 1800 mm");
    looks(false);
    retarget();
    looks(true);
    operator.sees(".part:first-child .note-line", "target 1805 mm");
  }

  /** As another page in front of it, or a phone in a pocket. */
  private void looks(boolean seen) {
    operator.page.executeScript(
        "Object.defineProperty(document, 'hidden', {value: !arguments[0], configurable: true});"
            + "document.dispatchEvent(new Event('visibilitychange'))",
        seen);
  }

  private void retarget() throws Exception {
    String path = "/api/jobs/" + job.id();
    JsonNode present = served.json(path);
    ((ObjectNode) present.get("specification")).put("targetMm", 1_805);
    String changed = ChangedMeanwhileTest.form(present, 1_815);
    assertEquals(200, served.put(path, changed).statusCode());
  }

  @Test
  void seesReadingsComeWithVerdictAdviceChartAndFigures() throws Exception {
    operator.go("/");
    operator.sees("#freshness", "Live");
    operator.page.executeScript("window.sameDocument = true");
    for (int taken = 1; taken <= 3; taken++) {
      touch(2.733, taken);
    }
    operator.sees("[data-figure='n']", "3");
    operator.sees(".word", "Good");
    operator.sees(".next", "Don't correct yet");
    operator.sees(".spread", "true for 95 of 100 readings");
    operator.counts("#chart svg", 1);
    assertEquals(true, operator.page.executeScript("return window.sameDocument"));
    operator.leavesNothingOnTheConsole();
  }

  @Test
  void seesVerdictRadiusDeviationDepthToAimForAndWhatToDo() throws Exception {
    operator.go(STATION);
    operator.sees(".now", "in free air");
    operator.sees(".word", "Ready");
    operator.sees(".next", "Measure piece 1, start, 1 of 3.");
    operator.sees(".part:last-child .value", "2.727");
    touch(2.9, 1);
    operator.sees(".word", "Too tight");
    operator.sees(".next", "Ask before you go on.");
    operator.sees(".of-piece", "it needs less bend");
    operator.sees(".figure", "169");
    operator.sees(".part:first-child .value", "−10");
    operator.sees(".of-piece", "Piece 1, start, 1 of 3, just now");
    operator.sees(".of-piece", "Next: piece 1, middle, 2 of 3");
    operator.sees("#log", "Recorded: 2.900 mm");
    operator.counts(".recent .sign[data-decision=DOES_NOT_CONFORM]", 1);
    String told = operator.find(".recent svg").getDomAttribute("aria-label");
    assertTrue(String.valueOf(told).contains("1 out of tolerance"), told);
    operator.leavesNothingOnTheConsole();
  }

  @Test
  void seesTheRadiusLiveBeforeItIsRecordedAndThenNoOlderVerdict() throws Exception {
    operator.go(STATION);
    touch(2.9, 1);
    operator.sees(".word", "Too tight");
    operator.page.executeScript(
        "window.words = []; new MutationObserver(() => words.push(document.querySelector('.word')"
            + ".textContent)).observe(document.querySelector('.word'), {childList: true})");
    served.indicator.show(2.733);
    operator.sees(".word", "Good");
    Object seen = operator.page.executeScript("return words.join('|')");
    assertTrue(String.valueOf(seen).contains("At rest"), () -> "" + seen);
    assertFalse(String.valueOf(seen).contains("Too tight"), () -> "" + seen);
  }

  /**
   * What a bridge shows that is on its way off the piece is no radius of it. The ruler is drawn
   * anew for another radius alone.
   */
  @ParameterizedTest
  @CsvSource({
    "mm, '1798.2, −1.8, 1798.2, −1.8, as it was, anew'",
    "inch, '70.795, −0.071, 70.795, −0.071, as it was, anew'"
  })
  void seesTheRadiusAsRecordedWhileTheBridgeIsLiftedOff(String unit, String expected)
      throws Exception {
    operator.go(STATION);
    Object shown =
        operator.page.executeAsyncScript(
            """
            const [unit, done] = arguments;
            localStorage.setItem('unit', unit);
            const module = document.querySelector('script[type=module]').src;
            const asked = [import(new URL('instrument.js', module)), fetch('/api/stations/A/overview')];
            Promise.all(asked).then(async ([{Instrument}, answer]) => {
              const instrument = new Instrument('A');
              instrument.show(await answer.json(), null);
              const at = (phase, radiusMm) => {
                instrument.live({phase, radiusMm, depthMm: 2.7, valueMm: 2.7});
                return [instrument.figure, instrument.off.value].map((each) => each.textContent);
              };
              at('FREE', null);
              const seen = at('RESTING', 1798.2);
              const mark = instrument.ruler.querySelector('circle');
              const ruled = () => (mark && instrument.ruler.contains(mark) ? 'as it was' : 'anew');
              seen.push(...at('TAKEN', 5428.2), ruled());
              at('RESTING', 1799);
              done([...seen, ruled()].join(', '));
            }, done);
            """,
            unit);
    assertEquals(expected, shown);
  }

  @Test
  void seesThatAPieceIsFlatBeforeItIsRecorded() throws Exception {
    operator.go(STATION);
    operator.sees("#freshness", "Live");
    String flat =
        "window.flat = false; new MutationObserver(() => { window.flat ||= "
            + "document.querySelector('.figure').textContent === 'flat'; })"
            + ".observe(document.querySelector('.figure'), {childList: true})";
    operator.page.executeScript(flat);
    served.indicator.show(0.001);
    operator.sees("#log", "Not recorded");
    Await.until(() -> Boolean.TRUE.equals(operator.page.executeScript("return window.flat")));
    operator.leavesNothingOnTheConsole();
  }

  @Test
  void seesWhyAReadingWasNotRecorded() throws Exception {
    operator.go(STATION);
    operator.sees("#freshness", "Live");
    served.indicator.show(-2);
    operator.sees(".now", "lift off");
    served.indicator.show(TerminalIndicator.FREE_MM);
    operator.sees(".word", "Not recorded");
    operator.sees(".of-piece", "Wrong face");
    operator.sees(".next", "Measure the other face: here the bend curves the other way.");
    operator.sees("#log", "Not recorded: Wrong face");
  }

  @Test
  void seesADeadIndicatorWithoutAVerdict() throws Exception {
    operator.go(STATION);
    touch(2.733, 1);
    operator.sees(".word", "Good");
    served.indicator.close();
    operator.counts(".instrument[data-dead=true]", 1);
    operator.sees(".word", "ndicator");
    operator.sees(".of-piece", "since");
    assertFalse(operator.text(".word").contains("Good"));
    assertFalse(operator.text(".next").contains("Leave the rollers"));
    giveUp();
  }

  @Test
  void goesOnByTheKeyboardAlone() throws Exception {
    operator.go(STATION);
    touch(2.733, 1);
    Await.until(() -> focusOn("Next piece"));
    operator.page.switchTo().activeElement().sendKeys(Keys.ENTER);
    operator.sees(".next", "Don't correct yet");
    operator.sees(".of-piece", "Next: piece 2, start");
  }

  private boolean focusOn(String act) {
    operator.page.switchTo().activeElement().sendKeys(Keys.TAB);
    return act.equals(focused());
  }

  @Test
  void isAskedForANameOnceBeforeTheFirstAct() throws Exception {
    operator.go(STATION);
    touch(2.9, 1);
    operator.page.executeScript("localStorage.removeItem('name')");
    operator.press("Measure again");
    operator.press("Rolled again");
    operator.sees("dialog", "Who is at this screen?");
    operator.fill("Name or initials", "Bert");
    operator.press("Continue");
    operator.sees(".note", "Piece 1, pass 2: measure it again");
    operator.sees("#viewer-name", "Bert");
  }

  @Test
  void choosesTheKeysOfAPedal() throws Exception {
    operator.go(STATION);
    operator.press("Anna");
    operator.field("Undo").sendKeys(Keys.F8);
    operator.field("Next piece").sendKeys("*");
    operator.press("Save");
    operator.sees("dialog .fault:not(:empty)", "the key of “Next piece” too");
    operator.field("Next piece").sendKeys(Keys.DELETE);
    operator.press("Save");
    operator.counts("dialog", 0);
    touch(2.733, 1);
    operator.counts("[data-act='Undo']:enabled", 1);
    operator.page.findElement(By.tagName("body")).sendKeys(Keys.F8);
    operator.sees("dialog", "Undo piece 1, start: why?");
  }

  /** The second Enter, or a held one, took the first reason that the question offers. */
  @Test
  void enterPressedTwiceAsksAndUndoesNothing() throws Exception {
    operator.go(STATION);
    touch(2.733, 1);
    operator.counts("[data-act='Undo']:enabled", 1);
    operator.page.executeScript("document.querySelector('[data-act=Undo]').focus()");
    new Actions(browser).sendKeys(Keys.ENTER, Keys.ENTER).perform();
    operator.sees("dialog", "Undo piece 1, start: why?");
    touch(2.733, 2);
    assertTrue(served.store.readings().exclusionsOfJob(job.id()).isEmpty());
    operator.press("Cancel");
    operator.counts("dialog", 0);
    assertEquals("Undo", focused());
  }

  @Test
  void readsInInchesAndIsToldWhenThePageIsNotLive() throws Exception {
    operator.go(STATION);
    operator.page.executeScript("localStorage.setItem('unit', 'inch')");
    operator.go(STATION);
    operator.sees("#freshness", "Live");
    touch(2.54, 1);
    operator.sees("#readings", "0.10000");
    operator.sees(".reading .caption", "Radius, in");
    Await.until(
        () -> operator.text(".recent .newest").equals(operator.text(".reading .figure")),
        () -> operator.text(".recent .newest") + " and " + operator.text(".reading .figure"));
    served.web.close();
    operator.sees("#stale", "Not up to date since");
    assertTrue(operator.text("#freshness").contains("Not live"));
    operator.sees(".word", "Not live");
    assertEquals(1, operator.count(".instrument[data-dead=true]"));
    giveUp();
  }
}
