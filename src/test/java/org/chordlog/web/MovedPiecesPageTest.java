package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.chordlog.measure.Job;
import org.chordlog.store.Some;
import org.junit.jupiter.api.Test;

/** The job page, where pieces that were measured under the wrong job go to the right one. */
final class MovedPiecesPageTest extends ShopTest {
  private static final String MACHINE = "three-roll bender";

  /** The one in work, with four pieces, the newest two of which belong to the other. */
  private static Job bent(Bent bent, String name) {
    Job job = shop.served.selected(Some.job(name, MACHINE));
    for (int i = 1; i <= 4; i++) {
      bent.piece(job, i);
    }
    return job;
  }

  private static long readings(Job job) {
    return shop.served.store.readings().countOfJob(job.id());
  }

  private static void asksForPieces(String name, Job other) throws Exception {
    shop.goToJob(name);
    shop.press("Pieces belong to another job");
    shop.sees("dialog", "Which job do the pieces belong to?");
    shop.sees("dialog", other.name() + "target 1800, limits 1788 to 1812");
    shop.findsNothingGrave();
    shop.press(other.name());
    shop.sees("dialog", "Move to job " + other.name() + "?");
    shop.findsNothingGrave();
  }

  @Test
  void thePiecesOfAnotherJobGoThereInOneDialogAfterTheChoiceOfTheJob() throws Exception {
    Job other = shop.served.store.jobs().add(Some.job("Right rings", MACHINE), "tester");
    Job job = bent(new Bent(shop.served), "Forgotten hoops");
    asksForPieces("Forgotten hoops", other);
    assertEquals("Piece 4, 3 readings", shop.text("dialog option:checked"));
    shop.choose("firstPiece", "3");
    assertEquals("Pieces 3 to 4, 6 readings", shop.text("dialog option:checked"));
    shop.press("Move");
    shop.sees(".note", "6 readings moved: now pieces 1 to 2 of job Right rings.");
    shop.sees(".note", "The station still measures for job Forgotten hoops: choose the job there.");
    shop.sees("#readings", "excluded: Belongs to job Right rings: there as piece 2");
    shop.sees("#events", "Pieces 3 to 4 moved to job Right rings: there pieces 1 to 2");
    assertEquals(6, readings(other));
    assertEquals(12, readings(job));
  }

  @Test
  void aRefusalStandsInTheDialogThatStaysOpen() throws Exception {
    shop.looksAt(390, 844);
    Bent bent = new Bent(shop.served);
    Job other = shop.served.store.jobs().add(Some.job("Late rings", MACHINE), "tester");
    Job unused = bent(bent, "Late hoops");
    bent.piece(other, 1);
    asksForPieces("Late hoops", other);
    shop.press("Move");
    shop.sees("dialog .fault.general", "was measured since, after piece 4");
    assertTrue(shop.text("dialog .fault.general").startsWith("Job Late rings was"));
    assertEquals(3, readings(other));
    shop.refusalsWereMeant();
    shop.looksAt(1280, 800);
  }
}
