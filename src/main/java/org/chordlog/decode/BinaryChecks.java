package org.chordlog.decode;

import java.util.ArrayList;
import java.util.List;
import org.chordlog.decode.Checksum.Encoding;
import org.chordlog.decode.Checksum.Kind;

/** Checks of frames that are not text. */
final class BinaryChecks {
  private BinaryChecks() {}

  /** The checks that hold in all frames; none where the start bytes must do. */
  static List<Checksum> of(BinaryCut cut) {
    List<Checksum> holding = new ArrayList<>();
    for (Kind kind : Kind.values()) {
      for (boolean start : new boolean[] {true, false}) {
        for (boolean high : new boolean[] {true, false}) {
          Checksum check = new Checksum(kind, Encoding.RAW, "", false, start, false, high);
          if (kind.bytes > 0 && (kind.bytes > 1 || high) && holds(cut, check)) {
            holding.add(check);
          }
        }
      }
    }
    boolean bounded = cut.startLength() >= 2 || cut.framing().idleMs() > 0;
    return holding.isEmpty() && bounded ? List.of(Checksum.NONE) : holding;
  }

  private static boolean holds(BinaryCut cut, Checksum check) {
    CheckReader reader = new CheckReader(check, cut.startLength(), 0);
    Frame frame = new Frame();
    for (byte[] bytes : cut.frames()) {
      frame.set(bytes, 0, bytes.length, 0);
      if (reader.verify(frame) != null) {
        return false;
      }
    }
    return true;
  }
}
