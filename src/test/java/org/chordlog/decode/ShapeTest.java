package org.chordlog.decode;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Collections;
import java.util.List;
import org.chordlog.measure.LengthUnit;
import org.junit.jupiter.api.Test;

/** Unit switched, resolution switched, sign reversed in mid-stream. */
final class ShapeTest {
  private static final FrameProfile UNITS = BuiltInProfile.UNIT_LINES.profile();
  private static final FrameProfile MM = BuiltInProfile.SIGNED_MM_LINES.profile();

  private static String lines(String line, int times) {
    return String.join("", Collections.nCopies(times, line + "\n"));
  }

  private static List<String> last(FrameProfile profile, String text, int count) {
    List<String> told = Fed.told(profile, text);
    return told.subList(told.size() - count, told.size());
  }

  @Test
  void aUnitThatTheFrameNamesIsTakenAtOnce() {
    assertEquals(
        List.of("5123000 MM", "5122926 INCH", "5123000 MM"),
        last(UNITS, lines("5.123 mm", 5) + "0.20169 in\n5.123 mm\n", 3));
  }

  @Test
  void anotherResolutionIsTakenWhenItStaysAndTheFrameNamesItsUnit() {
    String refused = "refused 5.12 mm: unit or resolution changed: 2 decimals instead of 3";
    assertEquals(
        List.of(refused, refused, "5120000 MM", "5120000 MM"),
        last(UNITS, lines("5.123 mm", 5) + lines("5.12 mm", 4), 4));
  }

  @Test
  void oneCutNumberIsRefusedAndTheStreamGoesOn() {
    assertEquals(
        List.of(
            "refused 5.12 mm: unit or resolution changed: 2 decimals instead of 3", "5123000 MM"),
        last(UNITS, lines("5.123 mm", 5) + "5.12 mm\n5.123 mm\n", 2));
  }

  @Test
  void decimalsThatChangeWithoutAUnitInTheFrameStayRefused() {
    assertEquals(
        Collections.nCopies(
            9, "refused +0.2017: unit or resolution changed: 4 decimals instead of 3"),
        last(MM, lines("+5.123", 5) + lines("+0.2017", 9), 9));
  }

  @Test
  void aUnitAgainstTheProfileIsRefused() {
    assertEquals(
        List.of("refused +0.2017 in: unit INCH, the profile says MM"),
        Fed.told(MM, "+0.2017 in\n"));
  }

  @Test
  void aSignThatIsGoneIsRefusedWherePlusWasWritten() {
    FrameProfile optional = FrameProfile.lines(NumberForm.DECIMAL, LengthUnit.MM);
    assertEquals(
        List.of("refused 5.123: sign missing", "0 MM", "-5123000 MM"),
        last(optional, lines("+5.123", 5) + "5.123\n0.000\n-5.123\n", 3));
  }

  @Test
  void aLeadingZeroThatIsGoneIsRefused() {
    assertEquals(
        List.of("refused +5.123: 1 digits before the mark instead of 2", "12500000 MM"),
        last(MM, lines("+05.123", 5) + "+5.123\n+12.500\n", 2));
  }

  @Test
  void aDirectionInTheFrameReversesTheSign() {
    FrameProfile profile =
        FrameProfile.of(
            Framing.LINES,
            "(?P<value>[+-][0-9.]+)(?P<reversed>R?)",
            MM.number(),
            LengthUnit.MM,
            java.util.Map.of(),
            Checksum.NONE);
    assertEquals(List.of("1500000 MM", "-1500000 MM"), Fed.told(profile, "+1.500\n+1.500R\n"));
  }
}
