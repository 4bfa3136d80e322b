package org.chordlog.decode;

import java.util.ArrayList;
import java.util.List;
import org.chordlog.decode.Checksum.Encoding;
import org.chordlog.decode.Checksum.Kind;

/** Checks that are worth trying on an unknown stream. */
final class Checks {
  private static final List<Kind> KINDS =
      List.of(
          Kind.CRC16, Kind.CRC_CCITT, Kind.CRC_CCITT_ZERO, Kind.XOR, Kind.SUM, Kind.SUM_NEGATED);
  private static final List<String> SEPARATORS = List.of("*", "");

  private Checks() {}

  static List<Checksum> usual(boolean marked) {
    List<Checksum> checks = new ArrayList<>(List.of(Checksum.NONE));
    for (Kind kind : KINDS) {
      for (String separator : SEPARATORS) {
        checks.add(Checksum.simple(kind, separator));
        if (kind.bytes == 1) {
          checks.add(new Checksum(kind, Encoding.DECIMAL, separator, false, false, false, false));
        }
      }
      if (marked) {
        behindTheEnd(kind, checks);
      }
    }
    return checks;
  }

  private static void behindTheEnd(Kind kind, List<Checksum> checks) {
    for (Encoding encoding : List.of(Encoding.HEX, Encoding.RAW)) {
      checks.add(new Checksum(kind, encoding, "", true, false, true, false));
      checks.add(new Checksum(kind, encoding, "", true, true, true, false));
      checks.add(new Checksum(kind, encoding, "", true, false, false, false));
    }
  }
}
