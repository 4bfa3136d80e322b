package org.chordlog.decode;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Map;
import org.chordlog.decode.Checksum.Encoding;
import org.chordlog.decode.Checksum.Kind;
import org.chordlog.measure.LengthUnit;
import org.junit.jupiter.api.Test;

final class ChecksumTest {
  private static final Framing STX_ETX = Framing.markers("\u0002", "\u0003");

  private static List<String> read(Framing framing, Checksum checksum, String text) {
    return Fed.told(
        FrameProfile.of(framing, "", NumberForm.DECIMAL, LengthUnit.MM, Map.of(), checksum), text);
  }

  /** 02 07 sums to F7 negated: worked in the serial-line guide's ASCII mode (memory). */
  @Test
  void sumsOfPublishedBytes() {
    byte[] bytes = {2, 7};
    assertEquals(0xF7, Sums.of(Kind.SUM_NEGATED, bytes, 0, 2));
    assertEquals(9, Sums.of(Kind.SUM, bytes, 0, 2));
    assertEquals(5, Sums.of(Kind.XOR, bytes, 0, 2));
  }

  /**
   * The usual check input "123456789": 29B1 from start FFFF, 31C3 from start 0; from memory, and
   * computed bit by bit in {@link Sender}.
   */
  @Test
  void theSecondUsualCrcOfTheUsualCheckInput() {
    byte[] digits = Bytes.of("123456789");
    assertEquals(0x29B1, Sums.of(Kind.CRC_CCITT, digits, 0, 9));
    assertEquals(0x31C3, Sums.of(Kind.CRC_CCITT_ZERO, digits, 0, 9));
    assertEquals(Sender.ccitt(digits), Sums.of(Kind.CRC_CCITT, digits, 0, 9));
  }

  /** 31 + 2E + 35 is 148 in decimal. */
  @Test
  void decimalSums() {
    Checksum decimal = new Checksum(Kind.SUM, Encoding.DECIMAL, "*", false, false, false, false);
    assertEquals(List.of("1500000 MM"), read(Framing.LINES, decimal, "1.5*148\r\n"));
    assertEquals(
        List.of("refused 1.5*149: check does not agree"),
        read(Framing.LINES, decimal, "1.5*149\r\n"));
  }

  /** 31 '1' + 2E '.' + 35 '5' = 94; 31 ^ 2E ^ 35 = 2A, by hand. */
  @Test
  void hexAndRawInEachPlace() {
    List<String> read = List.of("1500000 MM");
    assertEquals(read, read(Framing.LINES, Checksum.simple(Kind.SUM, "*"), "1.5*94\r\n"));
    assertEquals(read, read(Framing.LINES, Checksum.simple(Kind.XOR, ""), "1.52a\r\n"));
    assertEquals(read, read(Framing.LINES, Checksum.simple(Kind.SUM_NEGATED, ""), "1.56C\r\n"));
    Framing crlf = new Framing(Framing.Kind.TERMINATOR, "\r\n", "", "", 0, 0, 0);
    Checksum raw = new Checksum(Kind.XOR, Encoding.RAW, "", false, false, false, false);
    assertEquals(read, read(crlf, raw, "1.5*\r\n"));
    Checksum all = new Checksum(Kind.XOR, Encoding.RAW, "", true, true, true, false);
    assertEquals(read, read(STX_ETX, all, "\u00021.5\u0003+"));
    Checksum crc = new Checksum(Kind.CRC16, Encoding.RAW, "", true, false, false, false);
    int sum = Sender.crc(Bytes.of("1.5"));
    String sent = "\u00021.5\u0003" + (char) (sum & 0xFF) + (char) (sum >> 8);
    assertEquals(read, read(STX_ETX, crc, sent));
  }

  @Test
  void aWrongOrMissingCheckIsRefused() {
    Checksum sum = Checksum.simple(Kind.SUM, "*");
    assertEquals(
        List.of(
            "refused 1.5*95: check does not agree",
            "refused 1.5*9G: check does not agree",
            "refused 1.5_94: no separator before the check",
            "refused 94: too short for its check"),
        read(Framing.LINES, sum, "1.5*95\n1.5*9G\n1.5_94\n94\n"));
  }
}
