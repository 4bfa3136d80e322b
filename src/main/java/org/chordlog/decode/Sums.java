package org.chordlog.decode;

/** Check sums over {@code bytes[from, to)}. */
public final class Sums {
  private static final int[] CRC = new int[256];
  private static final int[] CCITT = new int[256];

  static {
    for (int b = 0; b < 256; b++) {
      CRC[b] = shifted(b);
      CCITT[b] = ccittShifted(b);
    }
  }

  private Sums() {}

  private static int shifted(int value) {
    int register = value;
    for (int bit = 0; bit < 8; bit++) {
      register = (register & 1) == 0 ? register >>> 1 : (register >>> 1) ^ 0xA001;
    }
    return register;
  }

  /** CRC-16 of MODBUS over Serial Line V1.02, appendix B: start 0xFFFF, polynomial 0xA001. */
  public static int crc16(byte[] bytes, int from, int to) {
    int register = 0xFFFF;
    for (int i = from; i < to; i++) {
      register = (register >>> 8) ^ CRC[(register ^ bytes[i]) & 0xFF];
    }
    return register;
  }

  public static int of(Checksum.Kind kind, byte[] bytes, int from, int to) {
    return switch (kind) {
      case NONE -> 0;
      case XOR -> xor(bytes, from, to);
      case SUM -> sum(bytes, from, to) & 0xFF;
      case SUM_NEGATED -> -sum(bytes, from, to) & 0xFF;
      case CRC16 -> crc16(bytes, from, to);
      case CRC_CCITT -> ccitt(0xFFFF, bytes, from, to);
      case CRC_CCITT_ZERO -> ccitt(0, bytes, from, to);
    };
  }

  /** Polynomial x^16 + x^12 + x^5 + 1 (ITU-T V.41), highest bit first. */
  private static int ccitt(int start, byte[] bytes, int from, int to) {
    int register = start;
    for (int i = from; i < to; i++) {
      register = (register << 8) ^ CCITT[((register >>> 8) ^ bytes[i]) & 0xFF];
    }
    return register & 0xFFFF;
  }

  private static int ccittShifted(int value) {
    int register = value << 8;
    for (int bit = 0; bit < 8; bit++) {
      register = (register & 0x8000) == 0 ? register << 1 : (register << 1) ^ 0x1021;
    }
    return register & 0xFFFF;
  }

  private static int xor(byte[] bytes, int from, int to) {
    int all = 0;
    for (int i = from; i < to; i++) {
      all ^= bytes[i];
    }
    return all & 0xFF;
  }

  private static int sum(byte[] bytes, int from, int to) {
    int all = 0;
    for (int i = from; i < to; i++) {
      all += bytes[i];
    }
    return all;
  }
}
