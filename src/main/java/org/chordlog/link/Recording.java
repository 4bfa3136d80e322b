package org.chordlog.link;

import java.util.HexFormat;

/**
 * A recorded stream: a text file with one line for each chunk of bytes, microseconds since the
 * start and the bytes in hex, as {@code 50123 2b30352e3132330d0a}. Lines that begin with # are
 * comments.
 */
public final class Recording {
  private static final HexFormat HEX = HexFormat.of();

  private Recording() {}

  /** One chunk of a stream. */
  @SuppressWarnings("ArrayRecordComponent")
  record Chunk(long atMicros, byte[] bytes) {}

  /** The line for {@code bytes[0, count)} that came that long after the start. */
  public static String line(long sinceStartMicros, byte[] bytes, int count) {
    return sinceStartMicros + " " + HEX.formatHex(bytes, 0, count);
  }

  static Chunk parse(String line, int number) throws LinkException {
    int blank = line.indexOf(' ');
    try {
      long micros = Long.parseLong(line, 0, Math.max(0, blank), 10);
      return new Chunk(micros, HEX.parseHex(line.substring(blank + 1).strip()));
    } catch (IllegalArgumentException e) {
      throw new LinkException(
          LinkException.Reason.REFUSED,
          "Line " + number + " of the recording is not 'microseconds hex-bytes'.");
    }
  }
}
