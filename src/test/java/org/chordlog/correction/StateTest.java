package org.chordlog.correction;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.chordlog.correction.Told.Correction;
import org.chordlog.correction.Told.JobStart;
import org.chordlog.correction.Told.Lot;
import org.chordlog.correction.Told.Piece;
import org.chordlog.correction.Told.SetUp;
import org.chordlog.measure.BadInput;
import org.junit.jupiter.api.Test;

/** The state is a function of what was told, bit for bit, and survives as bytes. */
final class StateTest {
  /** Any mixture of happenings; piece numbers are put in later. */
  @Provide
  Arbitrary<List<Told>> happenings() {
    Arbitrary<Double> permil = Arbitraries.doubles().between(-15, 15);
    Arbitrary<Told> pieces = permil.map(y -> new Piece(1, List.of(Bench.reading(y))));
    Arbitrary<Told> places =
        permil.map(
            y ->
                new Piece(
                    1, List.of(Bench.reading(y).at("a", 1), Bench.reading(y + 1).at("b", 1))));
    Arbitrary<Told> flats = Arbitraries.of(new Piece(1, List.of(PieceReading.flat(1e-7))));
    Arbitrary<Double> dial = Arbitraries.doubles().between(5, 30);
    Arbitrary<Told> moves = dial.flatMap(a -> dial.map(b -> Correction.between(a, b)));
    Arbitrary<Told> others =
        Arbitraries.of(
            new Lot("A"),
            new Lot("B"),
            new Lot("C"),
            new SetUp(null),
            new SetUp(12.5),
            Correction.withoutAmount(),
            Correction.by(0.1),
            new Told.TargetChange(Aim.symmetric(1850, 10)),
            new JobStart(2, Aim.symmetric(1500, 12), "arch", "tube", "B", 50),
            new JobStart(3, Bench.AIM, "hoop", "tube", "A", null),
            new Told.ScaleChange(MachineScale.unknown()));
    return Arbitraries.frequencyOf(
            net.jqwik.api.Tuple.of(12, pieces),
            net.jqwik.api.Tuple.of(4, places),
            net.jqwik.api.Tuple.of(1, flats),
            net.jqwik.api.Tuple.of(3, moves),
            net.jqwik.api.Tuple.of(3, others))
        .list()
        .ofMaxSize(120);
  }

  private static void tell(Corrector corrector, Told told, int number) {
    try {
      corrector.tell(told instanceof Piece piece ? new Piece(number, piece.readings()) : told);
    } catch (BadInput refused) {
      assertEquals("lot", refused.faults().get(0).field(), "only a lot may come twice here");
    }
  }

  private static Corrector begun() {
    Corrector corrector = new Corrector(Bench.dial(Bench.KNOWN), Tuning.usual());
    corrector.tell(new JobStart(1, Bench.AIM, "hoop", "tube", "A", null));
    return corrector;
  }

  @Property(tries = 60)
  void recomputationAndRestartGiveTheSameBits(@ForAll("happenings") List<Told> all) {
    Corrector straight = begun();
    Corrector restarted = begun();
    for (int i = 0; i < all.size(); i++) {
      tell(straight, all.get(i), i + 1);
      tell(restarted, all.get(i), i + 1);
      if (i % 7 == 3) {
        restarted = Corrector.restore(restarted.checkpoint(), Tuning.usual());
      }
    }
    Corrector recomputed = begun();
    for (int i = 0; i < all.size(); i++) {
      tell(recomputed, all.get(i), i + 1);
    }
    assertArrayEquals(straight.checkpoint(), restarted.checkpoint());
    assertArrayEquals(straight.checkpoint(), recomputed.checkpoint());
    assertEquals(straight.snapshot(), restarted.snapshot());
  }

  @Property(tries = 60)
  void whateverHappensTheNumbersStayNumbers(@ForAll("happenings") List<Told> all) {
    Corrector corrector = begun();
    for (int i = 0; i < all.size(); i++) {
      tell(corrector, all.get(i), i + 1);
      Belief now = corrector.state().filter().belief();
      assertTrue(Double.isFinite(now.level()) && Double.isFinite(now.gain()), now::toString);
      assertTrue(now.levelVariance() > 0 && now.gainVariance() > 0, now::toString);
      double least = now.covariance() * now.covariance() * (1 - 1e-9);
      assertTrue(now.levelVariance() * now.gainVariance() >= least, now::toString);
      assertTrue(
          corrector.advice().text().toString().endsWith(".")
              || corrector.advice().text().toString().endsWith(")"));
    }
  }

  /** The state does not grow with the pieces. */
  @Test
  void theStateDoesNotGrow() {
    Corrector corrector = begun();
    List<Integer> sizes = new ArrayList<>();
    for (int i = 1; i <= 20_000; i++) {
      corrector.tell(new Piece(i, List.of(Bench.reading(Math.sin(i)))));
      if (i % 5_000 == 0) {
        sizes.add(corrector.checkpoint().length);
      }
    }
    assertEquals(1, sizes.stream().distinct().count(), sizes::toString);
    assertTrue(sizes.get(0) < 40_000, sizes::toString);
  }

  @Test
  void damagedAndForeignStatesAreRefused() {
    byte[] state = begun().checkpoint();
    byte[] shorter = Arrays.copyOf(state, state.length - 3);

    byte[] foreign = state.clone();
    foreign[3] = 99;
    for (byte[] bad : List.of(shorter, foreign, new byte[0])) {
      assertThrows(BadInput.class, () -> Corrector.restore(bad, Tuning.usual()));
    }
  }
}
