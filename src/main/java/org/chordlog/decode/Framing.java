package org.chordlog.decode;

import org.chordlog.measure.BadInput;
import org.chordlog.measure.Check;

/**
 * Where a frame begins and ends. Texts stand for bytes, one character a byte (ISO 8859-1).
 *
 * @param terminator of {@link Kind#TERMINATOR}; empty: CR or LF, in any mixture
 * @param start of {@link Kind#MARKERS}, and of a {@link Kind#FIXED_LENGTH} frame that has such
 *     bytes
 * @param end likewise
 * @param length bytes of a {@link Kind#FIXED_LENGTH} frame
 * @param idleMs pause that ends a frame of {@link Kind#IDLE_GAP}, and drops a half frame of any
 *     other kind; 0: none
 * @param maxLength most bytes of a frame; 0: 64
 */
public record Framing(
    Kind kind, String terminator, String start, String end, int length, int idleMs, int maxLength) {
  public static final int MOST_BYTES = 256;
  public static final Framing LINES = new Framing(Kind.TERMINATOR, "", "", "", 0, 0, 0);

  /** What bounds a frame. */
  public enum Kind {
    TERMINATOR,
    FIXED_LENGTH,
    IDLE_GAP,
    MARKERS
  }

  /** Null (not given) takes the default. */
  public Framing {
    kind = kind == null ? Kind.TERMINATOR : kind;
    terminator = Bytes.checked("terminator", terminator, 4);
    start = Bytes.checked("start", start, 4);
    end = Bytes.checked("end", end, 4);
    Check.within("length", length, kind == Kind.FIXED_LENGTH ? 1 : 0, MOST_BYTES);
    maxLength = maxLength == 0 ? Math.max(64, length) : maxLength;
    Check.within("maxLength", maxLength, 1, MOST_BYTES);
    Check.within("idleMs", idleMs, 0, 60_000);
    Check.within("length", length, 0, maxLength);
    if (kind == Kind.IDLE_GAP && idleMs == 0) {
      throw new BadInput("idleMs", idleMs, "is missing", "1 to 60000 for frames between pauses");
    }
    if (kind == Kind.MARKERS && (start.isEmpty() || end.isEmpty())) {
      throw new BadInput("start, end", start + end, "are missing", "1 to 4 bytes each");
    }
  }

  /** Bytes of the start marker where this kind has one. */
  int startLength() {
    return hasMarkers() ? start.length() : 0;
  }

  int endLength() {
    return hasMarkers() ? end.length() : 0;
  }

  private boolean hasMarkers() {
    return kind == Kind.MARKERS || kind == Kind.FIXED_LENGTH;
  }

  /** A fixed length that begins with those bytes. */
  public static Framing fixed(String start, int length) {
    return new Framing(Kind.FIXED_LENGTH, "", start, "", length, 0, 0);
  }

  public static Framing fixed(int length) {
    return new Framing(Kind.FIXED_LENGTH, "", "", "", length, 0, 0);
  }

  public static Framing markers(String start, String end) {
    return new Framing(Kind.MARKERS, "", start, end, 0, 0, 0);
  }

  public static Framing pauses(int idleMs) {
    return new Framing(Kind.IDLE_GAP, "", "", "", 0, idleMs, 0);
  }
}
