package org.chordlog.decode;

import static org.chordlog.decode.NumberForm.Mark.COMMA;
import static org.chordlog.decode.NumberForm.Mark.POINT;
import static org.chordlog.measure.LengthUnit.MM;

import java.util.Arrays;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import org.chordlog.decode.BinaryNumber.Order;
import org.chordlog.decode.Checksum.Encoding;
import org.chordlog.decode.Checksum.Kind;
import org.chordlog.decode.ModbusRegisters.Table;
import org.chordlog.decode.NumberForm.Sign;
import org.chordlog.measure.BadInput;
import org.jspecify.annotations.Nullable;

/** Generic profiles under plain names; each has a row in src/docs/stations.md. */
@SuppressWarnings("ImmutableEnumChecker") // profiles are records of values and copied maps
public enum BuiltInProfile {
  SIGNED_MM_LINES("+05.123\r\n", FrameProfile.lines(signed(null, null), MM)),
  FIXED_MM_LINES("+05.123\r\n", FrameProfile.lines(signed(2, 3), MM)),
  COMMA_MM_LINES(
      "+05,123\r\n", FrameProfile.lines(new NumberForm(COMMA, Sign.ALWAYS, null, null), MM)),
  UNIT_LINES("5.123 mm\r\n", FrameProfile.lines(NumberForm.DECIMAL, null)),
  SIGN_AFTER_MM_LINES(
      "05.123+\r\n", FrameProfile.lines(new NumberForm(POINT, Sign.AFTER, 2, 3), MM)),
  COUNT_LINES("+0005123\r\n", FrameProfile.lines(NumberForm.counts(Sign.ALWAYS, 7, "0.001"), MM)),
  STATUS_LINES("S +05.123 mm\r\n", status()),
  CHANNEL_MM_LINES(
      "1:+05.123\r\n", pattern("(?P<channel>[0-9]{1,2}):(?P<value>[+-][0-9]+\\.[0-9]+)")),
  TWO_VALUE_MM_LINES(
      "+05.123;-01.250\r\n",
      pattern("(?P<value1>[+-][0-9]+\\.[0-9]+);(?P<value2>[+-][0-9]+\\.[0-9]+)")),
  BUTTON_MM_LINES("+05.123\r\n", FrameProfile.lines(signed(null, null), MM).onButtonOnly()),
  POLLED_MM_LINES(
      "+05.123\r\n",
      FrameProfile.lines(signed(null, null), MM).withPolling(new Polling("?\r", 100))),
  CRC_MM_LINES("+05.123*6404\r\n", checked(Framing.LINES, Checksum.simple(Kind.CRC16, "*"))),
  SUM_MM_LINES("+05.123*54\r\n", checked(Framing.LINES, Checksum.simple(Kind.SUM, "*"))),
  MARKED_XOR_MM(
      "\u0002+05.123\u000333",
      checked(
          Framing.markers("\u0002", "\u0003"),
          new Checksum(Kind.XOR, Encoding.HEX, "", true, false, true, false))),
  FIXED_LENGTH_MM("+05.123", checked(Framing.fixed(7), Checksum.NONE)),
  PAUSED_MM("+05.123", checked(Framing.pauses(20), Checksum.NONE)),
  HEX_COUNT_LINES("00001403\r\n", FrameProfile.lines(NumberForm.hexadecimal(8, "0.001"), MM)),
  EXPONENT_MM_LINES("+5.12300E+00\r\n", FrameProfile.lines(signed(1, 5).withExponent(), MM)),
  JSON_MM_LINES("{\"v\": 5.123}\n", json()),
  SIGN_DIGIT_LINES("0005123\r\n", signDigit()),
  DECIMAL_SUM_MM_LINES(
      "+05.123*084\r\n",
      checked(
          Framing.LINES,
          new Checksum(Kind.SUM, Encoding.DECIMAL, "*", false, false, false, false))),
  BINARY_INT32_MICRONS(
      "\u00AAU\u0003\u0014\u0000\u0000[ ",
      binary(BinaryNumber.of(BinaryNumber.Type.INT32, Order.LOW_FIRST), 8, Kind.CRC_CCITT)),
  BINARY_INT24_MICRONS(
      "\u00AAU\u0000\u0014\u0003\u00D5b",
      binary(BinaryNumber.of(BinaryNumber.Type.INT24, Order.HIGH_FIRST), 7, Kind.CRC16)),
  BINARY_FLOAT_MM(
      "\u00AAU\u009E\u00EF\u00A3@o",
      binary(BinaryNumber.of(BinaryNumber.Type.FLOAT32, Order.LOW_FIRST), 7, Kind.SUM)),
  PACKED_DECIMAL_MICRONS(
      "\u00AAU\u0000\u0000Q#\u008D",
      binary(
          new BinaryNumber(
              BinaryNumber.Type.PACKED_DECIMAL,
              0,
              4,
              Order.HIGH_FIRST,
              BinaryNumber.SignDigit.FIRST,
              "F"),
          7,
          Kind.XOR)),
  MODBUS_INT32_MICRONS(
      "\u0001\u0003\u0004\u0000\u0000\u0014\u0003\u00B52",
      modbus(ModbusRegisters.Type.INT32, NumberForm.counts(Sign.OPTIONAL, null, "0.001"))),
  MODBUS_FLOAT_MM(
      "\u0001\u0003\u0004@\u00A3\u00EF\u009E\u00D2I",
      modbus(ModbusRegisters.Type.FLOAT32, NumberForm.DECIMAL));

  private final String example;
  private final FrameProfile profile;

  BuiltInProfile(String example, FrameProfile profile) {
    this.example = example;
    this.profile = profile;
  }

  private static NumberForm signed(@Nullable Integer integerDigits, @Nullable Integer decimals) {
    return new NumberForm(POINT, Sign.ALWAYS, integerDigits, decimals);
  }

  private static FrameProfile checked(Framing framing, Checksum checksum) {
    return FrameProfile.of(framing, "", signed(2, 3), MM, Map.of(), checksum);
  }

  private static FrameProfile pattern(String pattern) {
    return FrameProfile.of(Framing.LINES, pattern, signed(2, 3), MM, Map.of(), Checksum.NONE);
  }

  private static FrameProfile json() {
    String pattern = "\\{\"v\": ?(?P<value>-?[0-9.]+)\\}";
    return FrameProfile.of(
        Framing.LINES,
        pattern,
        NumberForm.DECIMAL.withVaryingDecimals(),
        MM,
        Map.of(),
        Checksum.NONE);
  }

  private static FrameProfile signDigit() {
    return FrameProfile.of(
            Framing.LINES,
            "(?P<sign>[08])(?P<value>[0-9]{6})",
            NumberForm.counts(Sign.NEVER, 6, "0.001"),
            MM,
            Map.of(),
            Checksum.NONE)
        .toBuilder()
        .signs(Map.of("0", SignMeaning.PLUS, "8", SignMeaning.MINUS))
        .build();
  }

  /** Behind two start bytes; a whole number counts thousandths of a millimetre. */
  private static FrameProfile binary(BinaryNumber number, int length, Kind check) {
    boolean real = number.type() == BinaryNumber.Type.FLOAT32;
    return new FrameProfileBuilder()
        .framing(Framing.fixed("\u00AAU", length))
        .binary(number)
        .number(real ? NumberForm.DECIMAL : NumberForm.counts(Sign.OPTIONAL, null, "0.001"))
        .unit(MM)
        .checksum(new Checksum(check, Encoding.RAW, "", false, true, false, true))
        .build();
  }

  private static FrameProfile status() {
    return FrameProfile.of(
        Framing.LINES,
        "(?P<status>[A-Z]) (?P<value>[+-][0-9]+\\.[0-9]+|[-]{7}) (?P<unit>mm|in)",
        signed(null, null),
        null,
        Map.of(
            "S", StatusMeaning.OK,
            "M", StatusMeaning.UNSTABLE,
            "O", StatusMeaning.OVER_RANGE,
            "U", StatusMeaning.UNDER_RANGE,
            "L", StatusMeaning.LOW_BATTERY,
            "E", StatusMeaning.ERROR),
        Checksum.NONE);
  }

  private static FrameProfile modbus(ModbusRegisters.Type type, NumberForm number) {
    return FrameProfile.of(
        new ModbusRegisters(1, Table.HOLDING, 0, type, false, 100, 500), number, MM);
  }

  public FrameProfile profile() {
    return profile;
  }

  /** A frame as it is sent for a depth of 5.123 mm, one character a byte. */
  public String example() {
    return example;
  }

  /** The name in station files and on the page, as {@code signed-mm-lines}. */
  public String plainName() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** The profile of that plain name. */
  public static BuiltInProfile named(String name) {
    return Arrays.stream(values())
        .filter(p -> p.plainName().equals(name))
        .findFirst()
        .orElseThrow(() -> new BadInput("profile", name, "is not a built-in profile", names()));
  }

  private static String names() {
    return Arrays.stream(values()).map(BuiltInProfile::plainName).collect(Collectors.joining(", "));
  }
}
