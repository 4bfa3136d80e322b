package org.chordlog.decode;

import java.util.ArrayList;
import java.util.List;

/** Feeds decoders in tests. */
final class Fed {
  static final long SECOND = 1_000_000_000L;

  private Fed() {}

  /** What a decoder makes of the text, fed in one piece a second after a quiet start. */
  static List<Decoded> whole(Decoder decoder, String text) {
    List<Decoded> out = new ArrayList<>();
    decoder.idle(0, out::add);
    byte[] bytes = Bytes.of(text);
    decoder.feed(bytes, 0, bytes.length, SECOND, out::add);
    return out;
  }

  static List<Decoded> whole(FrameProfile profile, String text) {
    return whole(Decoders.of(profile), text);
  }

  /** One line for each thing decoded, without its time. */
  static List<String> told(List<Decoded> decoded) {
    return decoded.stream().map(Fed::told).toList();
  }

  static String told(Decoded decoded) {
    if (decoded instanceof Decoded.Value v) {
      return v.valueNm()
          + " "
          + v.unit()
          + (v.channel() == 0 ? "" : " channel " + v.channel())
          + (v.button() ? " button" : "");
    }
    if (decoded instanceof Decoded.Status s) {
      return s.kind() + " " + s.text();
    }
    Decoded.Damaged d = (Decoded.Damaged) decoded;
    return "refused " + Bytes.text(d.raw(), 0, d.raw().length) + ": " + d.reason();
  }

  static List<String> told(FrameProfile profile, String text) {
    return told(whole(profile, text));
  }
}
