package org.chordlog.decode;

import java.util.Map;

/**
 * Frames of MODBUS Application Protocol V1.1b3, sections 6.3 and 6.4 (functions 3 and 4) and 7
 * (exceptions), with the CRC of MODBUS over Serial Line V1.02, section 2.5.1.2, low byte first.
 */
public final class ModbusFrames {
  static final int LONGEST = 16;
  static final int EXCEPTION_LENGTH = 5;
  private static final Map<Integer, String> EXCEPTIONS =
      Map.of(
          1, "illegal function",
          2, "illegal data address",
          3, "illegal data value",
          4, "device failure",
          5, "acknowledge",
          6, "device busy",
          8, "memory parity error");

  private ModbusFrames() {}

  /** Asks for the registers of one value. */
  public static byte[] request(ModbusRegisters registers) {
    return withCrc(
        registers.device(),
        registers.table().function(),
        registers.register() >>> 8,
        registers.register(),
        0,
        registers.type().registers());
  }

  /** Those bytes with their CRC behind them. */
  public static byte[] withCrc(int... bytes) {
    byte[] frame = new byte[bytes.length + 2];
    for (int i = 0; i < bytes.length; i++) {
      frame[i] = (byte) bytes[i];
    }
    int crc = Sums.crc16(frame, 0, bytes.length);
    frame[bytes.length] = (byte) crc;
    frame[bytes.length + 1] = (byte) (crc >>> 8);
    return frame;
  }

  /** Whether the last two bytes are the CRC of those before them. */
  public static boolean crcAgrees(byte[] bytes, int from, int to) {
    return to - from > 2 && Sums.crc16(bytes, from, to) == 0;
  }

  static String exception(int code) {
    return "exception " + code + ": " + EXCEPTIONS.getOrDefault(code, "unknown");
  }
}
