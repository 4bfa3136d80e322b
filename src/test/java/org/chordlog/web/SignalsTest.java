package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Objects;
import org.chordlog.Await;
import org.junit.jupiter.api.Test;

/** Sound and flash of a piece that is recorded, refused or out of tolerance, and their switches. */
final class SignalsTest extends OperatorTest {
  /** Notes each tone that starts, with the state of its audio context, and each flash. */
  private static final String LISTEN =
      """
      window.tones = [];
      window.flashes = [];
      const Real = OscillatorNode;
      window.OscillatorNode = class extends Real {
        start(at) {
          tones.push(this.frequency.value + ' ' + this.context.state);
          super.start(at);
        }
      };
      new MutationObserver((changes) =>
        changes.flatMap(({ addedNodes }) => [...addedNodes]).forEach((each) => {
          if (each.classList?.contains('flash')) flashes.push(each.dataset.kind);
        }),
      ).observe(document.body, { childList: true });
      """;

  @Test
  void aPieceThatIsGoodOrOutOrRefusedIsHeardAndSeen() throws Exception {
    listens();
    touch(2.733, 1);
    hears("880 running", "1320 running");
    sees("good");
    touch(2.9, 2);
    hears("230 running", "230 running", "230 running");
    sees("bad");
    served.indicator.show(-2);
    operator.sees(".now", "lift off");
    served.indicator.show(TerminalIndicator.FREE_MM);
    hears("330 running", "220 running");
    sees("refused");
    operator.leavesNothingOnTheConsole();
  }

  @Test
  void soundAndFlashAreSwitchedOffEachByItself() throws Exception {
    listens();
    switches("Sound", "Off");
    touch(2.733, 1);
    sees("good");
    switches("Sound", "On");
    switches("Flash", "Off");
    touch(2.733, 2);
    hears("880 running", "1320 running");
    assertEquals(List.of(), noted("flashes"));
    operator.press("Anna");
    operator.press("Try: refused");
    hears("330 running", "220 running");
    sees("refused");
  }

  /** What is solid of it ends where the figures begin; farther in they are read through it. */
  @Test
  void aFlashHidesNoFigure() throws Exception {
    operator.looksAt(1280, 800);
    operator.go(STATION);
    operator.counts(".dial", 1);
    operator.page.executeScript(
        "const flash = document.createElement('div'); flash.className = 'flash';"
            + "document.body.append(flash);");
    double solid =
        operator.number(
            "return parseFloat(getComputedStyle(document.querySelector('.flash')).borderLeftWidth)");
    double figure =
        operator.number("return document.querySelector('.figure').getBoundingClientRect().left");
    assertTrue(solid > 0 && solid <= figure, solid + " px of flash, figure from " + figure);
  }

  @Test
  void isSilentUntilThePageWasTouched() throws Exception {
    operator.go(STATION);
    operator.page.executeScript(LISTEN);
    operator.sees("#freshness", "Live");
    touch(2.733, 1);
    sees("good");
    assertEquals(List.of(), noted("tones"));
    operator.leavesNothingOnTheConsole();
  }

  /** At the station, touched once so that the browser lets sound out. */
  private void listens() throws Exception {
    operator.go(STATION);
    operator.page.executeScript(LISTEN);
    operator.sees("#freshness", "Live");
    operator.click("#title");
  }

  private void switches(String what, String to) throws Exception {
    operator.press("Anna");
    operator.field(what).sendKeys(to);
    operator.press("Save");
    operator.counts("dialog", 0);
  }

  /** Exactly these tones since it was looked at last. */
  private void hears(String... tones) throws Exception {
    Await.until(() -> noted("tones").equals(List.of(tones)), () -> "heard " + noted("tones"));
    operator.page.executeScript("tones.length = 0");
  }

  /** Exactly this flash since it was looked at last, and with it no tone that was not heard of. */
  private void sees(String kind) throws Exception {
    Await.until(() -> noted("flashes").equals(List.of(kind)), () -> "seen " + noted("flashes"));
    operator.page.executeScript("flashes.length = 0");
    assertEquals(List.of(), noted("tones"));
  }

  private List<?> noted(String what) {
    return (List<?>)
        Objects.requireNonNull(operator.page.executeScript("return window[arguments[0]]", what));
  }
}
