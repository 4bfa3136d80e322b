package org.chordlog.simulator;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import org.chordlog.decode.BuiltInProfile;
import org.chordlog.decode.Decoded;
import org.chordlog.decode.Decoder;
import org.chordlog.decode.Decoders;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

final class FrameWriterTest {
  @ParameterizedTest
  @EnumSource(BuiltInProfile.class)
  void writesTheExampleOfEachProfile(BuiltInProfile profile) {
    byte[] frame = new FrameWriter(profile, 0.001).frame(5_123_000, false);
    assertEquals(profile.example(), new String(frame, ISO_8859_1));
  }

  /** Twice in a row, since a first frame without a certain beginning is not trusted. */
  @ParameterizedTest
  @EnumSource(BuiltInProfile.class)
  void theDecoderReadsWhatItWrites(BuiltInProfile profile) {
    FrameWriter writer = new FrameWriter(profile, 0.001);
    for (long nm : new long[] {-4_583_000, 0, 417_000, 12_345_000}) {
      assertEquals(List.of(nm), values(profile, writer.frame(nm, false)));
    }
  }

  private static List<Long> values(BuiltInProfile profile, byte[] frame) {
    Decoder decoder = Decoders.of(profile.profile());
    List<Decoded> decoded = new ArrayList<>();
    for (long second = 0; second < 2; second++) {
      decoder.request(second * 1_000_000_000L);
      decoder.feed(frame, 0, frame.length, second * 1_000_000_000L + 1, decoded::add);
      decoder.idle(second * 1_000_000_000L + 900_000_000L, decoded::add);
    }
    return decoded.stream()
        .filter(d -> d instanceof Decoded.Value v && v.channel() <= 1)
        .map(d -> ((Decoded.Value) d).valueNm())
        .distinct()
        .toList();
  }
}
