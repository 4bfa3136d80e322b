package org.chordlog.decode;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

final class SignedLinesTest {
  private static final FrameProfile SIGNED = BuiltInProfile.SIGNED_MM_LINES.profile();
  private static final String STREAM = "+05.123\r\n-00.004\r\n+0x.1\r\n\r\n+12.000\n-01.250\r+";
  private static final List<String> TOLD =
      List.of(
          "5123000 MM",
          "-4000 MM",
          "refused +0x.1: unknown unit or text behind the number",
          "12000000 MM",
          "-1250000 MM");

  @Test
  void linesBecomeNanometres() {
    assertEquals(TOLD, Fed.told(SIGNED, STREAM));
  }

  @Test
  void anyCutGivesTheSame() {
    byte[] bytes = Bytes.of(STREAM);
    for (int cut = 0; cut <= bytes.length; cut++) {
      List<Decoded> out = new ArrayList<>();
      Decoder decoder = Decoders.of(SIGNED);
      decoder.feed(bytes, 0, cut, 1, out::add);
      decoder.feed(bytes, cut, bytes.length, 2, out::add);
      assertEquals(TOLD, Fed.told(out), "cut at " + cut);
    }
  }

  @Test
  void theTailOfAFirstLineIsNoValue() {
    assertEquals(
        List.of("refused 5.123: no sign before the number", "4000 MM"),
        Fed.told(SIGNED, "5.123\r\n+00.004\r\n"));
  }

  @Test
  void refusedFramesAreCountedAndTheLastFiftyKept() {
    Decoder decoder = Decoders.of(SIGNED);
    for (int i = 0; i < 60; i++) {
      Fed.whole(decoder, "bad " + i + "\n");
    }
    Fed.whole(decoder, "+1.000\n");
    DecodeCounts counts = decoder.counts();
    assertEquals(60, counts.damaged());
    assertEquals(1, counts.values());
    assertEquals(DecodeCounts.KEPT, counts.lastRefused().size());
    assertEquals("bad 10", Bytes.text(counts.lastRefused().get(0).raw(), 0, 6));
  }
}
