package org.chordlog.simulator;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.Objects;
import java.util.Optional;
import org.chordlog.correction.AsAdvised;
import org.chordlog.correction.CorrectionSnapshot;
import org.chordlog.correction.GainEstimate;
import org.chordlog.correction.Tuning;
import org.junit.jupiter.api.Test;

/** The story of the demo: its pieces as bent beside the same pieces as advised. */
final class AdvisedDemoTest {
  /** The demo's two lots, its creep and both corrections that are written in it. */
  private static final int PIECES = 245;

  private static final int SEEDS = 20;

  private static AdvisedDemo demo(long seed) throws IOException {
    return new AdvisedDemo(ScenarioFile.read(ScenarioFile.DEMO), seed);
  }

  private static Optional<AsAdvised> compared(AdvisedDemo demo) {
    CorrectionSnapshot now = demo.corrector.snapshot();
    return AsAdvised.of(now.trail(), demo.aim, now.learned().scale(), Tuning.usual());
  }

  /** At each moment from the tenth piece on, and with the seed that the demo starts with. */
  @Test
  void theDemoShowsItAllTheTime() throws IOException {
    AdvisedDemo demo = demo(ScenarioFile.read(ScenarioFile.DEMO).seed()).bend(10);
    for (int piece = 10; piece < PIECES; piece++) {
      AsAdvised found = compared(demo).orElseThrow();
      assertEquals(piece, found.pieces());
      demo.bend();
    }
    AsAdvised all = compared(demo).orElseThrow();
    assertEquals(2, all.bent().corrections());
    assertTrue(all.doubt().relative() < 0.6, "better known than was stated");
    assertTrue(all.advised().rootMeanSquareMm() < all.bent().rootMeanSquareMm());
  }

  /** Whatever the scale does within its uncertainty, advice would have been worth it. */
  @Test
  void adviceIsSeenToBeWorthIt() throws IOException {
    double bent = 0;
    double advised = 0;
    double worst = 0;
    for (long seed = 1; seed <= SEEDS; seed++) {
      AsAdvised found = compared(demo(seed).bend(PIECES)).orElseThrow();
      bent += found.bent().rootMeanSquareMm() / SEEDS;
      advised += found.advised().rootMeanSquareMm() / SEEDS;
      worst +=
          Math.max(found.doubt().less().rootMeanSquareMm(), found.doubt().more().rootMeanSquareMm())
              / SEEDS;
    }
    assertTrue(advised < 0.8 * bent, advised + " against " + bent);
    assertTrue(worst < bent, worst + " against " + bent);
  }

  /** As if each ignored advice had been a move that did nothing, it would seem to do less. */
  @Test
  void adviceThatIsIgnoredTeachesNothingOfTheScale() throws IOException {
    Scenario ignoring = ScenarioFile.read(ScenarioFile.DEMO).withoutCorrections();
    for (long seed = 1; seed <= SEEDS; seed++) {
      AdvisedDemo demo = new AdvisedDemo(ignoring, seed);
      double before = gain(demo).perMmPerUnit();
      demo.bend(PIECES);
      assertEquals(before, gain(demo).perMmPerUnit(), 1e-12 * before);
      assertEquals(
          0.3 * before, gain(demo).standardUncertaintyPerMmPerUnit(), 1e-12 * before, "" + seed);
    }
  }

  private static GainEstimate gain(AdvisedDemo demo) {
    return Objects.requireNonNull(demo.corrector.snapshot().learned().gain());
  }

  /** A second machine with the same chance whose operator follows shows what was foretold. */
  @Test
  void theSameMachineFollowedComesOutAsForetold() throws IOException {
    double foretold = 0;
    double shown = 0;
    for (long seed = 1; seed <= SEEDS; seed++) {
      foretold += compared(demo(seed).bend(PIECES)).orElseThrow().advised().rootMeanSquareMm();
      AdvisedDemo followed =
          new AdvisedDemo(ScenarioFile.read(ScenarioFile.DEMO).withoutCorrections(), seed);
      shown += compared(followed.follow(PIECES)).orElseThrow().bent().rootMeanSquareMm();
    }
    assertEquals(shown / SEEDS, foretold / SEEDS, 0.1 * shown / SEEDS);
  }
}
