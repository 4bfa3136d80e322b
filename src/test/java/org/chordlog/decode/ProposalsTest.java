package org.chordlog.decode;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.LongFunction;
import org.chordlog.measure.LengthUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

final class ProposalsTest {
  private static final int FRAMES = 60;

  private static List<Arrival> stream(LongFunction<byte[]> sender) {
    List<Arrival> stream = new ArrayList<>();
    byte[] tail = sender.apply(7777);
    stream.add(new Arrival(0, Bytes.copy(tail, tail.length / 2, tail.length)));
    for (int i = 1; i <= FRAMES; i++) {
      byte[] frame = sender.apply(Math.round(12_000 * Math.sin(i / 5.0) - i % 3));
      stream.add(new Arrival(i * 50_000_000L, frame));
    }
    return stream;
  }

  private static List<Arrival> text(LongFunction<String> sender) {
    return stream(microns -> Bytes.of(sender.apply(microns)));
  }

  private static Proposal best(List<Arrival> stream) {
    List<Proposal> proposals = Proposals.of(stream, null);
    assertTrue(!proposals.isEmpty());
    return proposals.get(0);
  }

  @ParameterizedTest
  @EnumSource
  void readsWhatABuiltInProfileSends(BuiltInProfile built) {
    List<Arrival> stream = stream(microns -> Sender.frame(built, microns));
    boolean registers = built.profile().kind() == DecoderKind.MODBUS_RTU;
    List<Proposal> proposals = Proposals.of(stream, built.profile().polling());
    Proposal fitting =
        proposals.stream()
            .filter(p -> !registers || p.profile().equals(built.profile()))
            .findFirst()
            .orElseThrow();
    byte[] last = stream.get(FRAMES).bytes();
    Decoder truth = Decoders.of(built.profile());
    List<Decoded> expected = new ArrayList<>();
    truth.idle(0, expected::add);
    truth.feed(last, 0, last.length, 1, expected::add);
    truth.idle(1_000_000_000L, expected::add);
    List<Decoded.Value> values = fitting.values();
    int each = expected.size();
    for (int i = 0; i < each; i++) {
      Decoded.Value sent = (Decoded.Value) expected.get(i);
      assertEquals(
          sent.valueNm(), values.get(values.size() - each + i).valueNm(), fitting.toString());
    }
    assertTrue(fitting.confidence() > 0.4, fitting.toString());
    assertEquals(built.profile().checksum(), fitting.profile().checksum());
  }

  @Test
  void namesTheBuiltInProfileItIs() {
    Proposal fixed = best(stream(m -> Sender.frame(BuiltInProfile.FIXED_MM_LINES, m)));
    assertEquals("fixed-mm-lines", fixed.name());
    assertEquals(List.of("the unit is mm"), fixed.assumptions());
  }

  @Test
  void aNamedUnitNeedsNoAssumption() {
    Proposal units = best(stream(m -> Sender.frame(BuiltInProfile.UNIT_LINES, m)));
    assertEquals(List.of(), units.assumptions());
    assertTrue(units.confidence() > 0.9);
  }

  @Test
  void manyDecimalsAreTakenForInches() {
    Proposal inches = best(text(m -> String.format("%+.4f\r\n", m / 25_400.0)));
    assertEquals(LengthUnit.INCH, inches.profile().unit());
  }

  @Test
  void sevenBitsWithParityAreSeen() {
    Proposal seven =
        best(
            stream(
                m -> {
                  byte[] frame = Sender.frame(BuiltInProfile.FIXED_MM_LINES, m);
                  for (int i = 0; i < frame.length; i++) {
                    frame[i] |= (byte) (Integer.bitCount(frame[i]) % 2 << 7);
                  }
                  return frame;
                }));
    assertTrue(seven.profile().sevenBit());
    assertTrue(seven.confidence() > 0.8);
  }

  @Test
  void textAroundTheNumberIsKept() {
    Proposal own = best(text(m -> String.format("G%d N %+.3f mm;\r\n", 1, m / 1000.0)));
    assertTrue(own.profile().pattern().contains("(?P<unit>"), own.toString());
    assertEquals(Proposal.SHOWN, own.values().size());
  }

  @Test
  void garbageGivesNothingOrNoConfidence() {
    Random random = new Random(9);
    List<Proposal> proposals =
        Proposals.of(
            stream(
                m -> {
                  byte[] noise = new byte[9];
                  random.nextBytes(noise);
                  return noise;
                }),
            null);
    assertTrue(proposals.stream().allMatch(p -> p.confidence() < 0.3), proposals.toString());
    assertEquals(List.of(), Proposals.of(List.of(), null));
  }
}
