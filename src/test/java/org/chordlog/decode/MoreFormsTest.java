package org.chordlog.decode;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.chordlog.decode.BinaryNumber.Order;
import org.chordlog.decode.BinaryNumber.SignDigit;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.LengthUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Exponents, hexadecimal, varying decimals, binary numbers, sign digits, lines passed over. */
final class MoreFormsTest {
  private static FrameProfile lines(NumberForm number) {
    return FrameProfile.lines(number, LengthUnit.MM);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "1.05E+01|10500000 MM",
        "+5.12300e+00|5123000 MM",
        "-4.0E-03|-4000 MM",
        "5123E-3|5123000 MM",
        "5.1|refused 5.1: no number",
        "5.1E|refused 5.1E: no number",
        "5.1E+99|refused 5.1E+99: no number",
        "9.9E+14|refused 9.9E+14: beyond 5000 kilometres"
      })
  void exponents(String line, String told) {
    assertEquals(List.of(told), Fed.told(lines(NumberForm.DECIMAL.withExponent()), line + "\n"));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "1403|5123000 MM",
        "FFFC|-4000 MM",
        "fffc|-4000 MM",
        "8000|-32768000 MM",
        "403|refused 403: 3 digits before the mark",
        "14G3|refused 14G3: 2 digits before the mark"
      })
  void hexadecimalCountsOfFixedLength(String line, String told) {
    FrameProfile profile = lines(NumberForm.hexadecimal(4, "0.001"));
    assertEquals(List.of(told), Fed.told(profile, line + "\n"));
  }

  @Test
  void decimalsThatVaryAreTakenWhereTheProfileSaysSo() {
    assertEquals(
        List.of("5123000 MM", "5120000 MM", "-3000000 MM", "4000000 MM"),
        Fed.told(
            BuiltInProfile.JSON_MM_LINES.profile(),
            "{\"v\": 5.123}\n{\"v\": 5.12}\n{\"v\": -3.0}\n{\"v\": 4}\n"));
  }

  @Test
  void numbersBelowOneWithoutALeadingZero() {
    NumberForm omitted =
        new NumberForm(NumberForm.Mark.POINT, NumberForm.Sign.ALWAYS, null, 3).withZeroOmitted();
    assertEquals(
        List.of("950000 MM", "1023000 MM", "-4000 MM"),
        Fed.told(lines(omitted), "+.950\n+1.023\n-.004\n"));
  }

  @Test
  void tabsAreBlanks() {
    FrameProfile named = FrameProfile.lines(NumberForm.DECIMAL, null);
    assertEquals(
        List.of("5123000 MM", "5122926 INCH", "5123000 UM"),
        Fed.told(named, "\t+5.123\tmm\r\n0.20169 Inch\n5123.000 \u00CE\u00BCm\n"));
  }

  @Test
  void linesThatSayNothingArePassedOverAndNoDamage() {
    FrameProfile profile =
        lines(NumberForm.DECIMAL).toBuilder().passOver(List.of("#.*", "-+", "T [0-9.]+ C")).build();
    assertEquals(
        List.of("5123000 MM", "refused X: no number"),
        Fed.told(profile, "# heading\n-----\nT 21.4 C\n5.123\nX\n"));
    assertThrows(BadInput.class, () -> profile.toBuilder().passOver(List.of("(")).build());
  }

  @Test
  void signDigitsMeanWhatTheProfileSays() {
    assertEquals(
        List.of("5123000 MM", "-5123000 MM"),
        Fed.told(BuiltInProfile.SIGN_DIGIT_LINES.profile(), "0005123\n8005123\n"));
  }

  private static FrameProfile binary(BinaryNumber number, int length) {
    return new FrameProfileBuilder()
        .framing(new Framing(Framing.Kind.FIXED_LENGTH, "", "\u00A5", "Z", length, 0, 0))
        .binary(number)
        .number(NumberForm.counts(NumberForm.Sign.OPTIONAL, null, "0.001"))
        .unit(LengthUnit.MM)
        .build();
  }

  private static List<String> read(BinaryNumber number, byte[] value) {
    String frame = "\u00A5" + Bytes.text(value, 0, value.length) + "Z";
    return Fed.told(binary(number, frame.length()), frame);
  }

  private static ByteBuffer four(ByteOrder order) {
    return ByteBuffer.allocate(4).order(order);
  }

  @Test
  void binaryNumbersOfEachLengthAndOrder() {
    assertEquals(
        List.of("-4000 MM"),
        read(BinaryNumber.of(BinaryNumber.Type.INT16, Order.HIGH_FIRST), new byte[] {-1, -4}));
    assertEquals(
        List.of("65532000 MM"),
        read(BinaryNumber.of(BinaryNumber.Type.UINT16, Order.LOW_FIRST), new byte[] {-4, -1}));
    assertEquals(
        List.of("-5123000 MM"),
        read(BinaryNumber.of(BinaryNumber.Type.INT24, Order.HIGH_FIRST), new byte[] {-1, -21, -3}));
    assertEquals(
        List.of("5123000 MM"),
        read(BinaryNumber.of(BinaryNumber.Type.UINT24, Order.LOW_FIRST), new byte[] {3, 20, 0}));
    assertEquals(
        List.of("-5123000 MM"),
        read(
            BinaryNumber.of(BinaryNumber.Type.INT32, Order.LOW_FIRST),
            four(ByteOrder.LITTLE_ENDIAN).putInt(-5123).array()));
    assertEquals(
        List.of("5123 MM"),
        read(
            BinaryNumber.of(BinaryNumber.Type.FLOAT32, Order.HIGH_FIRST),
            four(ByteOrder.BIG_ENDIAN).putFloat(5.123f).array()));
    assertEquals(
        List.of("ERROR not a number"),
        read(
            BinaryNumber.of(BinaryNumber.Type.FLOAT32, Order.HIGH_FIRST),
            four(ByteOrder.BIG_ENDIAN).putFloat(Float.NaN).array()));
  }

  @Test
  void packedDecimalsWithTheirSigns() {
    BinaryNumber last =
        new BinaryNumber(
            BinaryNumber.Type.PACKED_DECIMAL, 0, 3, Order.HIGH_FIRST, SignDigit.LAST, "D");
    assertEquals(List.of("5123000 MM"), read(last, new byte[] {0x05, 0x12, 0x3C}));
    assertEquals(List.of("-5123000 MM"), read(last, new byte[] {0x05, 0x12, 0x3D}));
    byte[] letter = {0x0A, 0x12, 0x3C, 0x5A, (byte) 0xA5, 0x05, 0x12, 0x3C};
    List<String> told = Fed.told(binary(last, 5), "\u00A5" + Bytes.text(letter, 0, 8) + "Z");
    assertTrue(told.get(1).endsWith("not a packed decimal"), told.toString());
    BinaryNumber none =
        new BinaryNumber(
            BinaryNumber.Type.PACKED_DECIMAL, 0, 2, Order.LOW_FIRST, SignDigit.NONE, "");
    assertEquals(List.of("5123000 MM"), read(none, new byte[] {0x23, 0x51}));
  }

  /** Start bytes inside a number must not move the frame. */
  @Test
  void startBytesInsideANumberDoNotMoveTheFrame() {
    FrameProfile profile = BuiltInProfile.BINARY_INT32_MICRONS.profile();
    byte[] body = {(byte) 0xAA, 0x55, (byte) 0xAA, 0x55, 0, 0};
    int crc = Sender.ccitt(body);
    String frame = Bytes.text(body, 0, 6) + (char) (crc >> 8) + (char) (crc & 0xFF);
    assertEquals(List.of("21930000 MM", "21930000 MM"), Fed.told(profile, frame + frame));
  }

  @Test
  void aBinaryFrameThatNothingBoundsIsRefused() {
    BinaryNumber number = BinaryNumber.of(BinaryNumber.Type.INT32, Order.HIGH_FIRST);
    FrameProfileBuilder bare =
        new FrameProfileBuilder().binary(number).unit(LengthUnit.MM).framing(Framing.fixed(4));
    BadInput refused = assertThrows(BadInput.class, bare::build);
    assertEquals("framing", refused.faults().get(0).field());
    assertThrows(BadInput.class, () -> binary(number, 5));
  }

  @Test
  void twoChannelsMakeOneDepth() {
    ChannelCombiner difference =
        new ChannelCombiner(new Combination(Combination.Kind.DIFFERENCE, 1, 2));
    assertEquals(null, difference.offer(value(0, 5_123_000, 1)));
    assertEquals(
        6_373_000, Objects.requireNonNull(difference.offer(value(1, -1_250_000, 2))).valueNm());
    assertEquals(null, difference.offer(value(2, -1_250_000, 2)));
    assertEquals(null, difference.offer(value(3_000_000_000L, 5_000_000, 1)), "too far apart");
    ChannelCombiner mean = new ChannelCombiner(new Combination(Combination.Kind.MEAN, 1, 2));
    assertEquals(null, mean.offer(value(0, 3, 1)));
    assertEquals(2, Objects.requireNonNull(mean.offer(value(0, 2, 2))).valueNm());
    assertThrows(BadInput.class, () -> new Combination(Combination.Kind.MEAN, 1, 1));
  }

  private static Decoded.Value value(long nanos, long nm, int channel) {
    return new Decoded.Value(nanos, new byte[0], nm, LengthUnit.MM, channel, false);
  }

  @Test
  void channelsAreThoseThatThePatternCanGive() {
    assertEquals("0", BuiltInProfile.SIGNED_MM_LINES.profile().channelsInWords());
    assertEquals("1, 2", BuiltInProfile.TWO_VALUE_MM_LINES.profile().channelsInWords());
    assertEquals("0 to 15", BuiltInProfile.CHANNEL_MM_LINES.profile().channelsInWords());
    FrameProfile named =
        FrameProfile.of(
            Framing.LINES,
            "(?P<value>[0-9.]+)",
            NumberForm.DECIMAL,
            LengthUnit.MM,
            Map.of(),
            Checksum.NONE);
    assertEquals(0, named.onlyChannel());
  }
}
