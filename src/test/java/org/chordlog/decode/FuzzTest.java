package org.chordlog.decode;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Random and mutated bytes: no exception, and nothing grows. */
@Tag("slow")
final class FuzzTest {
  private static final int LONGEST_RAW = Framing.MOST_BYTES;
  private long told;

  @ParameterizedTest
  @EnumSource
  void shortRun(BuiltInProfile built) {
    fuzz(built, 200_000, 3);
  }

  @Tag("long")
  @ParameterizedTest
  @EnumSource
  void longRun(BuiltInProfile built) {
    fuzz(built, 20_000_000, 4);
  }

  private void fuzz(BuiltInProfile built, int bytes, long seed) {
    Random random = new Random(seed);
    Decoder decoder = Decoders.of(built.profile());
    long nanos = 0;
    told = 0;
    for (int fed = 0; fed < bytes; ) {
      byte[] chunk = random.nextInt(3) == 0 ? random(random) : mutated(built, random);
      nanos += random.nextInt(60) * 1_000_000L;
      decoder.idle(nanos, this::look);
      decoder.feed(chunk, 0, chunk.length, nanos, this::look);
      decoder.request(nanos);
      if (random.nextInt(1000) == 0) {
        decoder.reset();
      }
      fed += chunk.length;
    }
    DecodeCounts counts = decoder.counts();
    assertTrue(counts.lastRefused().size() <= DecodeCounts.KEPT);
    assertTrue(told == counts.values() + counts.statuses() + counts.damaged());
    assertTrue(
        counts.values() > bytes / 10_000, "the mutated frames left nothing: " + counts.values());
  }

  private static byte[] random(Random random) {
    byte[] chunk = new byte[random.nextInt(random.nextInt(50) == 0 ? 5000 : 40)];
    random.nextBytes(chunk);
    return chunk;
  }

  /** A few whole frames with bytes changed, lost or doubled. */
  private static byte[] mutated(BuiltInProfile built, Random random) {
    StringBuilder text = new StringBuilder();
    for (int i = random.nextInt(6); i >= 0; i--) {
      byte[] frame = Sender.frame(built, random.nextInt(24_001) - 12_000);
      text.append(Bytes.text(frame, 0, frame.length));
    }
    for (int i = random.nextInt(4); i > 0 && text.length() > 1; i--) {
      int at = random.nextInt(text.length());
      switch (random.nextInt(3)) {
        case 0 -> text.setCharAt(at, (char) random.nextInt(256));
        case 1 -> text.deleteCharAt(at);
        default -> text.insert(at, text.charAt(at));
      }
    }
    return Bytes.of(text.toString());
  }

  private void look(Decoded decoded) {
    told++;
    assertTrue(decoded.raw().length <= LONGEST_RAW);
    if (decoded instanceof Decoded.Value value) {
      assertTrue(Math.abs(value.valueNm()) <= Nanometres.MOST);
    }
  }
}
