package org.chordlog.decode;

import java.nio.ByteBuffer;
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
      case MODBUS_INT32_MICRONS -> answer(ByteBuffer.allocate(4).putInt((int) microns).array());
      case MODBUS_FLOAT_MM -> answer(ByteBuffer.allocate(4).putFloat(microns / 1000f).array());
    };
  }

  static byte[] bytes(String text) {
    return Bytes.of(text);
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
