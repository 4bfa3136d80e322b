package org.chordlog.decode;

import java.util.ArrayList;
import java.util.List;
import org.chordlog.decode.Checksum.Encoding;
import org.chordlog.decode.Checksum.Kind;

/** Checks that are worth trying on an unknown stream. */
final class Checks {
  private Checks() {}

  static List<Checksum> usual(boolean marked) {
    List<Checksum> checks = new ArrayList<>(List.of(Checksum.NONE));
    for (Kind kind : List.of(Kind.CRC16, Kind.XOR, Kind.SUM, Kind.SUM_NEGATED)) {
      checks.add(Checksum.simple(kind, "*"));
      checks.add(Checksum.simple(kind, ""));
      if (marked) {
        behindTheEnd(kind, checks);
      }
    }
    return checks;
  }

  private static void behindTheEnd(Kind kind, List<Checksum> checks) {
    for (Encoding encoding : Encoding.values()) {
      checks.add(new Checksum(kind, encoding, "", true, false, true, false));
      checks.add(new Checksum(kind, encoding, "", true, true, true, false));
      checks.add(new Checksum(kind, encoding, "", true, false, false, false));
    }
  }
}
