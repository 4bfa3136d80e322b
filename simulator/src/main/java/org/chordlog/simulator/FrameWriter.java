package org.chordlog.simulator;

import static java.nio.charset.StandardCharsets.ISO_8859_1;

import java.math.BigDecimal;
import java.util.Locale;
import org.chordlog.decode.BuiltInProfile;
import org.chordlog.decode.ModbusFrames;

/** Writes values as an indicator of each built-in profile sends them. */
final class FrameWriter {
  private static final double INCH_NM = 25_400_000;

  private final BuiltInProfile profile;
  private final int decimals;

  FrameWriter(BuiltInProfile profile, double resolutionMm) {
    this.profile = profile;
    decimals = Math.max(0, BigDecimal.valueOf(resolutionMm).stripTrailingZeros().scale());
  }

  byte[] frame(long nm, boolean inches) {
    double mm = nm / 1e6;
    String text = signed(mm, decimals);
    String fixed = signed(mm, 3);
    return switch (profile) {
      case SIGNED_MM_LINES, BUTTON_MM_LINES, POLLED_MM_LINES -> bytes(text + "\r\n");
      case FIXED_MM_LINES -> bytes(fixed + "\r\n");
      case COMMA_MM_LINES -> bytes(text.replace('.', ',') + "\r\n");
      case UNIT_LINES -> bytes(plain(nm, inches) + "\r\n");
      case SIGN_AFTER_MM_LINES -> bytes(fixed.substring(1) + fixed.charAt(0) + "\r\n");
      case COUNT_LINES -> bytes(String.format(Locale.ROOT, "%+08d\r\n", Math.round(mm * 1000)));
      case STATUS_LINES -> bytes("S " + withUnit(nm, inches) + "\r\n");
      case CHANNEL_MM_LINES -> bytes("1:" + text + "\r\n");
      case TWO_VALUE_MM_LINES -> bytes(text + ";-01.250\r\n");
      case CRC_MM_LINES ->
          bytes(fixed + String.format(Locale.ROOT, "*%04X\r\n", crc(bytes(fixed))));
      case SUM_MM_LINES ->
          bytes(fixed + String.format(Locale.ROOT, "*%02X\r\n", sum(bytes(fixed))));
      case MARKED_XOR_MM -> bytes('\u0002' + fixed + '\u0003' + hexXor(fixed + '\u0003'));
      case FIXED_LENGTH_MM, PAUSED_MM -> bytes(fixed);
      case HEX_COUNT_LINES ->
          bytes(String.format(Locale.ROOT, "%08X\r\n", (int) Math.round(mm * 1000)));
      case EXPONENT_MM_LINES -> bytes(String.format(Locale.ROOT, "%+.5E\r\n", mm));
      case JSON_MM_LINES -> bytes("{\"v\": " + Math.round(mm * 1000) / 1000.0 + "}\n");
      case SIGN_DIGIT_LINES ->
          bytes(
              (nm < 0 ? "8" : "0")
                  + String.format(Locale.ROOT, "%06d\r\n", Math.abs(Math.round(mm * 1000))));
      case DECIMAL_SUM_MM_LINES ->
          bytes(fixed + String.format(Locale.ROOT, "*%03d\r\n", sum(bytes(fixed))));
      case BINARY_INT32_MICRONS, BINARY_INT24_MICRONS, BINARY_FLOAT_MM, PACKED_DECIMAL_MICRONS ->
          BinaryFrames.frame(profile, mm);
      case MODBUS_INT32_MICRONS -> registers((int) Math.round(mm * 1000));
      case MODBUS_FLOAT_MM -> registers(Float.floatToIntBits((float) mm));
    };
  }

  /** A line of the value and, behind a semicolon, an encoder's counts. */
  byte[] withCounts(long nm, long counts) {
    return bytes(signed(nm / 1e6, decimals) + String.format(Locale.ROOT, ";%+010d\r\n", counts));
  }

  /** What an indicator sends whose battery is low; nothing where it has no word for it. */
  byte[] lowBattery() {
    return profile == BuiltInProfile.STATUS_LINES ? bytes("L ------- mm\r\n") : new byte[0];
  }

  private static byte[] bytes(String text) {
    return text.getBytes(ISO_8859_1);
  }

  private static String signed(double mm, int decimals) {
    return String.format(Locale.ROOT, "%+0" + (decimals + 4) + "." + decimals + "f", mm);
  }

  private String plain(long nm, boolean inches) {
    return inches
        ? String.format(Locale.ROOT, "%.5f in", nm / INCH_NM)
        : String.format(Locale.ROOT, "%." + decimals + "f mm", nm / 1e6);
  }

  private String withUnit(long nm, boolean inches) {
    return inches ? signed(nm / INCH_NM, 5) + " in" : signed(nm / 1e6, decimals) + " mm";
  }

  private static byte[] registers(int value) {
    return ModbusFrames.withCrc(
        1, 3, 4, value >>> 24, (value >>> 16) & 0xFF, (value >>> 8) & 0xFF, value & 0xFF);
  }

  private static int sum(byte[] bytes) {
    int sum = 0;
    for (byte b : bytes) {
      sum += b & 0xFF;
    }
    return sum & 0xFF;
  }

  private static int crc(byte[] bytes) {
    int[] values = new int[bytes.length];
    for (int i = 0; i < values.length; i++) {
      values[i] = bytes[i] & 0xFF;
    }
    byte[] whole = ModbusFrames.withCrc(values);
    return (whole[whole.length - 1] & 0xFF) << 8 | (whole[whole.length - 2] & 0xFF);
  }

  private static String hexXor(String covered) {
    int xor = 0;
    for (byte b : bytes(covered)) {
      xor ^= b & 0xFF;
    }
    return String.format(Locale.ROOT, "%02X", xor);
  }
}
