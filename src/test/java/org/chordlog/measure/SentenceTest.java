package org.chordlog.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A sentence is made once and said in the unit of whoever reads it. One inch is 25.4 mm. */
final class SentenceTest {
  @Test
  void lengthsAreSaidInTheReadersUnitAndNothingElseIs() {
    Sentence said =
        Sentence.of(
            "Level %s too tight (± %s). Open by 0.03 mm on the %s.",
            Quantity.of(8.6, 7.5), Quantity.uncertainty(7.5).withoutUnit(), "25.4 mm scale");
    assertEquals(
        "Level 8.6 mm too tight (± 7.5). Open by 0.03 mm on the 25.4 mm scale.", said.toString());
    assertEquals(
        "Level 0.34 in too tight (± 0.30). Open by 0.03 mm on the 25.4 mm scale.",
        said.in(Lengths.INCH));
  }

  /** Two significant digits of the uncertainty: JCGM 100:2008, 7.2.6. */
  @ParameterizedTest
  @CsvSource({
    "1800.123, 12, 1800 mm, 70.87 in",
    "1800.123, 0.9, 1800.12 mm, 70.871 in",
    "-0.1, 0.02, −0.100 mm, −0.00394 in",
    "0.00004, 0.12, 0.00 mm, 0.0000 in",
    "-0.00004, 0.12, 0.00 mm, 0.0000 in"
  })
  void digitsFollowTheUncertainty(double mm, double expandedMm, String inMm, String inInches) {
    Quantity length = Quantity.of(mm, expandedMm);
    assertEquals(inMm, Lengths.MM.text(length));
    assertEquals(inInches, Lengths.INCH.text(length));
  }

  @ParameterizedTest
  @CsvSource({
    "1788.16, 1788.16 mm, 70.4 in",
    "1800, 1800 mm, 70.8661 in",
    "0.0006, 0.0006 mm, 0.000024 in",
    "0.01, 0.01 mm, 0.00039 in",
    "0, 0 mm, 0 in"
  })
  void whatWasStatedGetsNoDigitsThatWereNotGiven(double mm, String inMm, String inInches) {
    assertEquals(inMm, Lengths.MM.text(Quantity.stated(mm)));
    assertEquals(inInches, Lengths.INCH.text(Quantity.stated(mm)));
  }

  @Test
  void aChangeHasItsSign() {
    assertEquals("+3.120 mm", Lengths.MM.text(Quantity.fixed(3.12, 3).withSign()));
    assertEquals("+0.12283 in", Lengths.INCH.text(Quantity.fixed(3.12, 3).withSign()));
    assertEquals("−3.120 mm", Lengths.MM.text(Quantity.fixed(-3.12, 3).withSign()));
  }

  @Test
  void sentencesWithinSentencesFollow() {
    Sentence limit = Sentence.of("the limit of ± %s", Quantity.stated(12));
    Sentence all =
        Sentence.plain("It is 50 % creep.").and(Sentence.of("It is past %s already.", limit));
    assertEquals(
        "It is 50 % creep. It is past the limit of ± 0.4724 in already.", all.in(Lengths.INCH));
    assertTrue(all.hasLength());
    assertFalse(Sentence.plain("12 mm").hasLength());
    List<Sentence> some = List.of(Sentence.plain("a"), Sentence.EMPTY, Sentence.of("%d %%", 5));
    assertEquals("a; 5 %", Sentence.joined("; ", some).toString());
  }

  @Test
  void aRefusalNamesItsBoundsInTheReadersUnit() {
    BadInput refused =
        assertThrows(BadInput.class, () -> new Roller("R", 6000, 0.1, Face.OUTER, true));
    Sentence allowed = refused.faults().get(0).allowed();
    assertEquals("1 mm to 5000 mm", allowed.toString());
    assertEquals("0.0394 in to 196.8504 in", allowed.in(Lengths.INCH));
  }

  @Test
  void aNumberWithItsSignHasATrueMinusAndNoneWhereItRoundsToNothing() {
    assertEquals("−0.31", Decimals.signed(-0.312, 2));
    assertEquals("+0.08", Decimals.signed(0.08, 2));
    assertEquals("0.00", Decimals.signed(-0.001, 2));
  }
}
