package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.util.List;
import org.chordlog.measure.LogbookEntry;
import org.chordlog.measure.LogbookEntry.Correction;
import org.chordlog.measure.Recorded;
import org.chordlog.store.Logbooks;
import org.junit.jupiter.api.Test;

/** What was done on a machine, written and read on its page in a real browser. */
final class LogbookPageTest extends ShopTest {
  private static final String BOOK = "[aria-label='Log book']";

  private static List<Logbooks.Listed> kept(String machine) {
    return shop.served.store.logbooks().ofMachine(machine, Long.MAX_VALUE, 50);
  }

  @Test
  void workIsReadTheNewestFirstAndWhatWasCorrectedOnlyWhenAskedFor() throws Exception {
    shop.go("/machine.html?machine=roller%201");
    shop.sees(BOOK, "Roller set straight, entry");
    shop.sees(BOOK, "Petra, written by maintenance");
    assertEquals(3, shop.count(BOOK + " tbody tr"));
    shop.sees(BOOK + " tbody tr:first-child", "Roller set straight");
    shop.press("Show what was corrected");
    shop.counts(BOOK + " tbody tr", 4);
    shop.sees(BOOK, "Replaced by a newer entry");
    shop.findsNothingGrave();
  }

  /** What somebody found at a job's page is work on the machine, too. */
  @Test
  void aCauseThatWasFoundForASignalIsInTheLogBook() throws Exception {
    long job = shop.jobId("Canopy hoops");
    long reading = shop.served.store.readings().ofJob(job, 0, 9).get(5).id();
    String body =
        "{\"characteristic\": \"start\", \"chart\": \"INDIVIDUALS\", \"readingId\": "
            + reading
            + ", \"cause\": \"Entry guide worn\", \"action\": \"Guide renewed\"}";
    String path = "/api/jobs/" + job + "/signal-answers";
    assertEquals(201, shop.served.post(path, body).statusCode());
    String machine = shop.served.store.jobs().find(job).orElseThrow().machine();
    shop.go("/machine.html?machine=" + machine.replace(" ", "%20"));
    shop.first(BOOK + " tr", "Entry guide worn Guide renewed Canopy hoops");
    shop.findsNothingGrave();
  }

  @Test
  void workIsWrittenThenCorrectedThenTakenBack() throws Exception {
    shop.go("/machine.html?machine=roller%202");
    shop.sees(BOOK, "Nothing written yet");
    shop.press("Write an entry");
    shop.fill("Which roller", "exit");
    shop.fill("Before", "Ø 179.4 mm");
    shop.fill("After", "Ø 180.0 mm");
    shop.findsNothingGrave();
    shop.press("Write it down");
    shop.sees(BOOK + " tbody", "Roller changed, exit");
    shop.press("Correct");
    shop.click("dialog .choices button");
    shop.fill("After", "Ø 180.1 mm");
    shop.press("Correct it");
    shop.sees(".fault", "Is missing");
    shop.refusalsWereMeant();
    shop.fill("Why (kept in the record)", "read again");
    shop.press("Correct it");
    shop.sees(BOOK + " tbody", "Ø 180.1 mm");
    assertEquals("Ø 180.1 mm", kept("roller 2").get(0).entry().work().after());
    assertEquals(kept("roller 2").get(1).entry().done(), kept("roller 2").get(0).entry().done());
    shop.press("Correct");
    shop.click("dialog .choices button:nth-child(2)");
    shop.fill("Why (kept in the record)", "other machine");
    shop.press("Take it back");
    shop.sees(BOOK, "Nothing written yet");
    assertFalse(kept("roller 2").get(0).entry().tellsOfWork());
  }

  @Test
  void aCorrectionOfWhatWasCorrectedMeanwhileSaysWhatItSaysNowAndKeepsWhatWasTyped()
      throws Exception {
    shop.go("/machine.html?machine=roller%201");
    shop.sees(BOOK, "all four bearings");
    shop.click(BOOK + " tbody tr:nth-child(2) button");
    shop.click("dialog .choices button");
    shop.fill("Remark", "three of four bearings");
    shop.fill("Why (kept in the record)", "one was not reached");
    LogbookEntry seen =
        kept("roller 1").stream()
            .map(Logbooks.Listed::entry)
            .filter(each -> each.work().kind() == LogbookEntry.Kind.LUBRICATED)
            .findFirst()
            .orElseThrow();
    LogbookEntry.Work other =
        new LogbookEntry.Work(LogbookEntry.Kind.LUBRICATED, "", "", "", "only the bending roller");
    var unused =
        shop.served
            .store
            .logbooks()
            .add(
                new LogbookEntry(
                    0,
                    seen.machine(),
                    other,
                    seen.done(),
                    new Correction(seen.id(), "asked again", false),
                    new Recorded(seen.recorded().atMicros() + 1, "Marek")));
    shop.press("Correct it");
    shop.sees(".fault.general", "Marek corrected this entry meanwhile");
    shop.sees(".fault.general", "only the bending roller");
    shop.refusalsWereMeant();
    assertEquals(
        "three of four bearings", shop.find("dialog [name='note']").getDomProperty("value"));
  }
}
