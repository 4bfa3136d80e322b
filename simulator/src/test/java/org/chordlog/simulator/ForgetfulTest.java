package org.chordlog.simulator;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.List;
import java.util.Objects;
import java.util.stream.IntStream;
import org.chordlog.correction.Notice;
import org.chordlog.measure.BadInput;
import org.junit.jupiter.api.Test;

/** Moves of the rollers that nobody records, and what is asked then. */
final class ForgetfulTest {
  private static final int PIECES = 245;
  private static final int SEEDS = 20;
  private static final double SET_UP_ERROR_MM = 0.3;

  /** Recorded moves and what was asked while an operator followed all advice. */
  private static final class Asked {
    private int recorded;
    private int gaps;
    private int needless;

    void follow(AdvisedDemo demo, Forgetful memory) {
      boolean unrecorded = false;
      for (int piece = 0; piece < PIECES; piece++) {
        demo.bend();
        needless += !unrecorded && demo.asks(Notice.Kind.DID_YOU_CORRECT) ? 1 : 0;
        Double amount = demo.corrector.advice().amount();
        unrecorded = amount != null && !moved(demo, amount, memory.records());
      }
    }

    private boolean moved(AdvisedDemo demo, double amount, boolean records) {
      demo.move(amount, records);
      recorded += records ? 1 : 0;
      gaps += records && demo.asks(Notice.Kind.UNRECORDED_MOVE) ? 1 : 0;
      return records;
    }
  }

  private static Asked follow(int everyUnrecorded) throws IOException {
    Scenario demo = ScenarioFile.read(ScenarioFile.DEMO).withoutCorrections();
    Asked asked = new Asked();
    for (long seed = 1; seed <= SEEDS; seed++) {
      asked.follow(new AdvisedDemo(demo, seed), new Forgetful(everyUnrecorded));
    }
    return asked;
  }

  @Test
  void everySoManyThMoveIsForgotten() {
    Forgetful third = new Forgetful(3);
    List<Boolean> records = IntStream.range(0, 6).mapToObj(i -> third.records()).toList();
    assertEquals(List.of(true, true, false, true, true, false), records);
    assertTrue(new Forgetful(0).records());
    assertThrows(BadInput.class, () -> new Forgetful(-1));
  }

  @Test
  void whoRecordsEachMoveIsAskedNothing() throws IOException {
    Asked asked = follow(0);
    assertTrue(asked.recorded > SEEDS, "rollers were moved");
    assertEquals(0, asked.gaps + asked.needless);
  }

  /** The number on the scale gives it away at the next recorded move. */
  @Test
  void aMoveThatWasForgottenIsAskedAboutAtTheNextOne() throws IOException {
    Asked asked = follow(2);
    assertTrue(asked.gaps > 0 && asked.gaps >= asked.recorded - SEEDS, asked.gaps + " gaps");
    assertTrue(asked.needless < 0.002 * PIECES * SEEDS, asked.needless + " needless");
  }

  /** A move as far as after a set-up shows in the first piece, whatever the number on the scale. */
  @Test
  void aLargeMoveThatWasForgottenIsAskedAboutAtOnce() throws IOException {
    int asked = 0;
    for (long seed = 1; seed <= SEEDS; seed++) {
      AdvisedDemo demo = new AdvisedDemo(ScenarioFile.read(ScenarioFile.DEMO), seed);
      demo.move(SET_UP_ERROR_MM, false);
      demo.bend();
      demo.move(Objects.requireNonNull(demo.corrector.advice().amount()), false);
      demo.bend();
      asked += demo.asks(Notice.Kind.DID_YOU_CORRECT) ? 1 : 0;
    }
    assertTrue(asked >= 0.9 * SEEDS, asked + " of " + SEEDS);
  }
}
