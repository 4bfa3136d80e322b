package org.chordlog.decode;

import org.chordlog.measure.BadInput;
import org.chordlog.measure.Check;
import org.jspecify.annotations.Nullable;

/**
 * Where the number is in the body of a binary frame (between start bytes, check and end bytes), and
 * how it is made of bytes; the profile's {@code number.scale} applies.
 *
 * @param offset bytes of the body before the number
 * @param bytes length of a PACKED_DECIMAL, 1 to 7; 0 for the others, whose type gives it
 * @param order which byte is sent first
 * @param signDigit which hexadecimal digit of a PACKED_DECIMAL is its sign
 * @param minus what that digit is for a negative number, as {@code D}; every other one is positive
 */
public record BinaryNumber(
    Type type, int offset, int bytes, Order order, SignDigit signDigit, String minus) {
  private static final int MOST_PACKED = 7;

  /** Number types; FLOAT32 after IEEE 754, PACKED_DECIMAL two decimal digits a byte. */
  public enum Type {
    INT16(2, "int16"),
    UINT16(2, "uint16"),
    INT24(3, "int24"),
    UINT24(3, "uint24"),
    INT32(4, "int32"),
    UINT32(4, "uint32"),
    FLOAT32(4, "float32"),
    PACKED_DECIMAL(0, "packed decimal");

    private final int bytes;
    private final String words;

    Type(int bytes, String words) {
      this.bytes = bytes;
      this.words = words;
    }

    /** As it is said to people. */
    public String words() {
      return words;
    }
  }

  /** Byte orders. */
  public enum Order {
    HIGH_FIRST("high byte first"),
    LOW_FIRST("low byte first");

    private final String words;

    Order(String words) {
      this.words = words;
    }

    /** As it is said to people. */
    public String words() {
      return words;
    }
  }

  /** Where a packed decimal keeps its sign. */
  public enum SignDigit {
    NONE,
    FIRST,
    LAST
  }

  /** Null (not given) takes the default. */
  public BinaryNumber {
    type = type == null ? Type.INT32 : type;
    order = order == null ? Order.HIGH_FIRST : order;
    signDigit = signDigit == null ? SignDigit.NONE : signDigit;
    minus = minus == null || minus.isEmpty() ? "D" : minus;
    Check.within("offset", offset, 0, Framing.MOST_BYTES);
    boolean packed = type == Type.PACKED_DECIMAL;
    Check.within("bytes", bytes, packed ? 1 : 0, packed ? MOST_PACKED : type.bytes);
    if (!minus.matches("[0-9A-Fa-f]{1,15}")) {
      throw new BadInput("minus", minus, "are no hexadecimal digits", "1 to 15 of 0-9, A-F");
    }
  }

  public static BinaryNumber of(Type type, Order order) {
    return new BinaryNumber(type, 0, 0, order, SignDigit.NONE, "");
  }

  int length() {
    return type == Type.PACKED_DECIMAL ? bytes : type.bytes;
  }

  /** The whole number at {@code bytes[at]}; null where a packed decimal has a digit above 9. */
  @Nullable Long whole(byte[] data, int at) {
    long unsigned = 0;
    for (int i = 0; i < length(); i++) {
      int index = order == Order.HIGH_FIRST ? i : length() - 1 - i;
      unsigned = unsigned << 8 | (data[at + index] & 0xFF);
    }
    return switch (type) {
      case INT16 -> (long) (short) unsigned;
      case INT24 -> (unsigned << 40) >> 40;
      case INT32 -> (long) (int) unsigned;
      case UINT16, UINT24, UINT32, FLOAT32 -> unsigned;
      case PACKED_DECIMAL -> packed(unsigned);
    };
  }

  private @Nullable Long packed(long digits) {
    long rest = digits;
    int count = 2 * length();
    int sign = -1;
    if (signDigit == SignDigit.LAST) {
      sign = (int) (rest & 0xF);
      rest >>>= 4;
    } else if (signDigit == SignDigit.FIRST) {
      sign = (int) (rest >>> (4 * (count - 1)));
      rest &= (1L << (4 * (count - 1))) - 1;
    }
    long value = 0;
    for (int i = count - 1; i >= 0; i--) {
      int digit = (int) (rest >>> (4 * i)) & 0xF;
      if (digit > 9) {
        return null;
      }
      value = value * 10 + digit;
    }
    return isMinus(sign) ? -value : value;
  }

  private boolean isMinus(int digit) {
    return digit >= 0 && minus.chars().anyMatch(c -> Character.digit(c, 16) == digit);
  }
}
