package org.chordlog.decode;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.chordlog.decode.NumberForm.Mark;
import org.chordlog.decode.NumberForm.Sign;
import org.chordlog.measure.LengthUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The forms of frames that indicators send. */
final class FormsTest {
  private static FrameProfile lines(Mark mark, Sign sign) {
    return FrameProfile.lines(new NumberForm(mark, sign, null, null), LengthUnit.MM);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      ignoreLeadingAndTrailingWhitespace = false,
      value = {
        "+ 0.12|120000 MM",
        "  -  5.1 |-5100000 MM",
        "0005.1|5100000 MM",
        "5.1mm|5100000 MM",
        "5|5000000 MM",
        "-0.000|0 MM",
        "1.2345678|1234568 MM",
        "5.2 V|refused 5.2 V: unknown unit or text behind the number",
        "5,2|refused 5,2: unknown unit or text behind the number",
        "5.|refused 5.: no number",
        ".5|refused .5: 0 digits before the mark",
        "1e3|refused 1e3: unknown unit or text behind the number",
        "1 2|refused 1 2: unknown unit or text behind the number",
        "--5|refused --5: no number",
        "+-5|refused +-5: no number",
        "1234567890123456|refused 1234567890123456: no number",
        "9999999999|refused 9999999999: beyond 5000 kilometres",
        "Err|refused Err: no number"
      })
  void pointNumbers(String line, String told) {
    assertEquals(List.of(told), Fed.told(lines(Mark.POINT, Sign.OPTIONAL), line + "\n"));
  }

  @Test
  void aPointIsRefusedWhereACommaIsDue() {
    assertEquals(
        List.of("5200000 MM", "refused 5.2: unknown unit or text behind the number", "5200000 MM"),
        Fed.told(lines(Mark.COMMA, Sign.OPTIONAL), "5,2\n5.2\n5,2\n"));
  }

  @Test
  void signBehindTheNumber() {
    assertEquals(
        List.of("-5200000 MM", "5200000 MM"),
        Fed.told(lines(Mark.POINT, Sign.AFTER), "5.2-\n5.2 +\n"));
  }

  @Test
  void countsWithAScaleAndInches() {
    FrameProfile half =
        FrameProfile.lines(NumberForm.counts(Sign.OPTIONAL, null, "0.0005"), LengthUnit.INCH);
    assertEquals(List.of("12700 INCH", "-25400 INCH"), Fed.told(half, "1\n-2\n"));
  }

  @Test
  void sevenBitsArePickedOutOfEight() {
    FrameProfile seven = TestProfiles.sevenBit(BuiltInProfile.SIGNED_MM_LINES.profile());
    assertEquals(List.of("5123000 MM"), Fed.told(seven, "\u00AB05.1\u00B23\u008D\n"));
  }

  @Test
  void statusTextsAreStates() {
    FrameProfile status = BuiltInProfile.STATUS_LINES.profile();
    assertEquals(
        List.of(
            "5123000 MM",
            "5124000 MM",
            "OVER_RANGE O",
            "LOW_BATTERY L",
            "refused X +05.123 mm: unknown status 'X'"),
        Fed.told(status, "S +05.123 mm\nM +05.124 mm\nO ------- mm\nL +05.123 mm\nX +05.123 mm\n"));
    FrameProfile whole =
        FrameProfile.of(
            Framing.LINES,
            "",
            NumberForm.DECIMAL,
            LengthUnit.MM,
            Map.of(
                "----",
                StatusMeaning.OVER_RANGE,
                "bAt",
                StatusMeaning.LOW_BATTERY,
                "ready",
                StatusMeaning.OK),
            Checksum.NONE);
    assertEquals(
        List.of("OVER_RANGE ----", "LOW_BATTERY bAt", "1000000 MM"),
        Fed.told(whole, "----\n bAt\nready\n1.000\n"));
  }

  @Test
  void channelsInTurnAndInOneFrame() {
    assertEquals(
        List.of("5123000 MM channel 1", "-1250000 MM channel 2"),
        Fed.told(BuiltInProfile.CHANNEL_MM_LINES.profile(), "1:+05.123\n2:-01.250\n"));
    assertEquals(
        List.of("5123000 MM channel 1", "-1250000 MM channel 2"),
        Fed.told(BuiltInProfile.TWO_VALUE_MM_LINES.profile(), "+05.123;-01.250\n"));
    assertTrue(
        Fed.told(BuiltInProfile.TWO_VALUE_MM_LINES.profile(), "+05.123;-0x.250\n")
            .get(0)
            .startsWith("refused"));
  }

  @Test
  void signApartFromTheNumberAndAButton() {
    FrameProfile apart =
        FrameProfile.of(
            Framing.LINES,
            "(?P<sign>[+-]|)#(?P<value>[0-9]+[.][0-9]+)(?P<button>!?)",
            NumberForm.DECIMAL,
            LengthUnit.MM,
            Map.of(),
            Checksum.NONE);
    assertEquals(
        List.of("-1500000 MM", "1500000 MM button"), Fed.told(apart, "-#1.500\n#1.500!\n"));
  }

  @Test
  void echoesOfTheRequestArePassedOver() {
    assertEquals(
        List.of("5123000 MM"),
        Fed.told(BuiltInProfile.POLLED_MM_LINES.profile(), "?\r+05.123\r\n"));
  }

  @Test
  void aNewStartMarkerEndsADamagedFrame() {
    List<String> told =
        Fed.told(
            BuiltInProfile.MARKED_XOR_MM.profile(),
            "\u0002+05.123\u000333\r\n\u0002+05.1\u0002+05.123\u000333");
    assertEquals(3, told.size());
    assertEquals(2, told.stream().filter("5123000 MM"::equals).count());
    assertTrue(told.contains("refused \u0002+05.1: no whole frame"), told.toString());
  }

  @Test
  void aFixedLengthFindsItsPlaceAgain() {
    List<String> told =
        Fed.told(BuiltInProfile.FIXED_LENGTH_MM.profile(), "123+05.123+05.23+00.004-01.000");
    assertEquals(
        List.of("5123000 MM", "4000 MM", "-1000000 MM"),
        told.stream().filter(t -> !t.startsWith("refused")).toList());
    assertEquals(2, told.stream().filter(t -> t.startsWith("refused")).count());
  }

  @Test
  void longLinesAreBoundedAndCostOneRefusal() {
    List<String> told =
        Fed.told(BuiltInProfile.SIGNED_MM_LINES.profile(), "x".repeat(10_000) + "\n+1.000\n");
    assertEquals(2, told.size());
    assertEquals("1000000 MM", told.get(1));
  }

  @Test
  void anUncertainFirstFrameIsRefusedUnlessItWasQuietBefore() {
    FrameProfile optional = FrameProfile.lines(NumberForm.DECIMAL, LengthUnit.MM);
    List<Decoded> out = new ArrayList<>();
    byte[] tail = Bytes.of("5.123\n-5.123\n");
    Decoders.of(optional).feed(tail, 0, tail.length, 1, out::add);
    assertEquals(
        List.of("refused 5.123: first since opening, may have lost its beginning", "-5123000 MM"),
        Fed.told(out));
    assertEquals(List.of("5123000 MM", "-5123000 MM"), Fed.told(optional, "5.123\n-5.123\n"));
  }

  @Test
  void requestsComeAtTheirIntervalAndUnansweredOnesAreCounted() {
    Decoder decoder = Decoders.of(BuiltInProfile.POLLED_MM_LINES.profile());
    assertEquals(2, requestLength(decoder, 0));
    assertEquals(0, requestLength(decoder, 99_000_000));
    assertEquals(2, requestLength(decoder, 100_000_000));
    assertEquals(1, decoder.counts().unanswered());
    Fed.whole(decoder, "+05.123\r\n");
    assertEquals(2, requestLength(decoder, 200_000_000));
    assertEquals(1, decoder.counts().unanswered());
  }

  private static int requestLength(Decoder decoder, long nanos) {
    byte[] request = decoder.request(nanos);
    return request == null ? 0 : request.length;
  }
}
