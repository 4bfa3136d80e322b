package org.chordlog.decode;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.HexFormat;
import java.util.Locale;

/** An indicator that sends depths by a built-in profile; written apart from the decoders. */
final class Sender {
  private Sender() {}

  /** The frame for that depth. */
  static byte[] frame(BuiltInProfile profile, long microns) {
    String mm = String.format(Locale.ROOT, "%+07.3f", microns / 1000.0);
    return switch (profile) {
      case SIGNED_MM_LINES, FIXED_MM_LINES, BUTTON_MM_LINES, POLLED_MM_LINES -> bytes(mm + "\r\n");
      case COMMA_MM_LINES -> bytes(mm.replace('.', ',') + "\r\n");
      case UNIT_LINES -> bytes(String.format(Locale.ROOT, "%.3f mm\r\n", microns / 1000.0));
      case SIGN_AFTER_MM_LINES -> bytes(mm.substring(1) + mm.charAt(0) + "\r\n");
      case COUNT_LINES -> bytes(String.format(Locale.ROOT, "%+08d\r\n", microns));
      case STATUS_LINES -> bytes("S " + mm + " mm\r\n");
      case CHANNEL_MM_LINES -> bytes("1:" + mm + "\r\n");
      case TWO_VALUE_MM_LINES -> bytes(mm + ";-01.250\r\n");
      case CRC_MM_LINES -> bytes(mm + String.format("*%04X\r\n", crc(bytes(mm))));
      case SUM_MM_LINES -> bytes(mm + String.format("*%02X\r\n", mm.chars().sum() & 0xFF));
      case MARKED_XOR_MM -> bytes("\u0002" + mm + String.format("\u0003%02X", xor(mm + "\u0003")));
      case FIXED_LENGTH_MM, PAUSED_MM -> bytes(mm);
      case HEX_COUNT_LINES -> bytes(String.format("%08X\r\n", (int) microns));
      case EXPONENT_MM_LINES -> bytes(String.format(Locale.ROOT, "%+.5E\r\n", microns / 1000.0));
      case JSON_MM_LINES -> bytes("{\"v\": " + microns / 1000.0 + "}\n");
      case SIGN_DIGIT_LINES ->
          bytes((microns < 0 ? "8" : "0") + String.format("%06d\r\n", Math.abs(microns)));
      case DECIMAL_SUM_MM_LINES -> bytes(mm + String.format("*%03d\r\n", mm.chars().sum() & 0xFF));
      case BINARY_INT32_MICRONS -> {
        byte[] body = sync(4).order(ByteOrder.LITTLE_ENDIAN).putInt((int) microns).array();
        yield checked(body, ccitt(body) >> 8, ccitt(body));
      }
      case BINARY_INT24_MICRONS -> {
        int n = (int) microns;
        byte[] body = sync(3).put((byte) (n >> 16)).put((byte) (n >> 8)).put((byte) n).array();
        yield checked(body, crc(body) >> 8, crc(body));
      }
      case BINARY_FLOAT_MM -> {
        byte[] body = sync(4).order(ByteOrder.LITTLE_ENDIAN).putFloat(microns / 1000f).array();
        yield checked(body, text(body).chars().sum());
      }
      case PACKED_DECIMAL_MICRONS -> {
        String digits = String.format("%07d", Math.abs(microns));
        byte[] packed = HexFormat.of().parseHex((microns < 0 ? "F" : "0") + digits);
        byte[] body = sync(4).put(packed).array();
        yield checked(body, xor(text(body)));
      }
      case MODBUS_INT32_MICRONS -> answer(ByteBuffer.allocate(4).putInt((int) microns).array());
      case MODBUS_FLOAT_MM -> answer(ByteBuffer.allocate(4).putFloat(microns / 1000f).array());
    };
  }

  static byte[] bytes(String text) {
    return Bytes.of(text);
  }

  private static ByteBuffer sync(int more) {
    return ByteBuffer.allocate(2 + more).put((byte) 0xAA).put((byte) 0x55);
  }

  private static byte[] checked(byte[] body, int... check) {
    ByteBuffer frame = ByteBuffer.allocate(body.length + check.length).put(body);
    for (int each : check) {
      frame.put((byte) each);
    }
    return frame.array();
  }

  private static String text(byte[] bytes) {
    return Bytes.text(bytes, 0, bytes.length);
  }

  /** Bit by bit over polynomial 0x1021 of ITU-T V.41, start 0xFFFF. */
  static int ccitt(byte[] bytes) {
    int register = 0xFFFF;
    for (byte b : bytes) {
      register ^= (b & 0xFF) << 8;
      for (int bit = 0; bit < 8; bit++) {
        register = (register & 0x8000) != 0 ? register << 1 ^ 0x1021 : register << 1;
      }
      register &= 0xFFFF;
    }
    return register;
  }

  private static int xor(String text) {
    return text.chars().reduce(0, (a, b) -> a ^ b);
  }

  private static byte[] answer(byte[] data) {
    byte[] body = {1, 3, 4, data[0], data[1], data[2], data[3]};
    int crc = crc(body);
    return ByteBuffer.allocate(9).put(body).put((byte) crc).put((byte) (crc >> 8)).array();
  }

  /** Bit by bit, as in the standard's appendix; the decoder uses a table. */
  static int crc(byte[] bytes) {
    int register = 0xFFFF;
    for (byte b : bytes) {
      register ^= b & 0xFF;
      for (int bit = 0; bit < 8; bit++) {
        register = (register & 1) == 1 ? register >> 1 ^ 0xA001 : register >> 1;
      }
    }
    return register;
  }
}
