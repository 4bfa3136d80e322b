package org.chordlog.decode;

import org.chordlog.measure.BadInput;

/**
 * The check at the end of a frame.
 *
 * @param kind how it is computed
 * @param encoding as hexadecimal characters (either case), as raw bytes or as decimal digits
 * @param separator comes before the check and is not covered, as {@code *}
 * @param afterEnd whether the check follows the end marker instead of preceding it
 * @param coversStart whether the start marker is covered
 * @param coversEnd whether the end marker is covered
 * @param highFirst whether a raw CRC-16 sends its high byte first; hexadecimal always does
 */
public record Checksum(
    Kind kind,
    Encoding encoding,
    String separator,
    boolean afterEnd,
    boolean coversStart,
    boolean coversEnd,
    boolean highFirst) {
  public static final Checksum NONE = simple(Kind.NONE, "");

  /** Sums and cyclic redundancy checks. */
  public enum Kind {
    NONE(0),
    XOR(1),
    SUM(1),
    /** Two's complement of the sum: all bytes add up to zero. */
    SUM_NEGATED(1),
    /** MODBUS over Serial Line V1.02: polynomial 0xA001 reflected, start 0xFFFF. */
    CRC16(2),
    /** Polynomial 0x1021 of ITU-T V.41, highest bit first, start 0xFFFF. */
    CRC_CCITT(2),
    /** The same, start 0. */
    CRC_CCITT_ZERO(2);

    final int bytes;

    Kind(int bytes) {
      this.bytes = bytes;
    }
  }

  /** How the check is written. */
  public enum Encoding {
    HEX,
    RAW,
    /** The sum modulo 256 as three decimal digits. */
    DECIMAL
  }

  /** Null (not given) takes the default. */
  public Checksum {
    kind = kind == null ? Kind.NONE : kind;
    encoding = encoding == null ? Encoding.HEX : encoding;
    separator = Bytes.checked("separator", separator, 4);
    if (encoding == Encoding.DECIMAL && kind.bytes > 1) {
      throw new BadInput("encoding", encoding, "is for sums of one byte", "HEX, RAW");
    }
    if (coversEnd && !afterEnd) {
      throw new BadInput("coversEnd", true, "needs the check behind the end", "afterEnd: true");
    }
  }

  /** Hexadecimal before the end of the frame, over everything in front of the separator. */
  public static Checksum simple(Kind kind, String separator) {
    return new Checksum(kind, Encoding.HEX, separator, false, false, false, false);
  }

  /** Characters the check itself takes. */
  int width() {
    return switch (encoding) {
      case HEX -> 2 * kind.bytes;
      case RAW -> kind.bytes;
      case DECIMAL -> 3 * kind.bytes;
    };
  }
}
