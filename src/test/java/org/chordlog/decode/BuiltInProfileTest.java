package org.chordlog.decode;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.chordlog.measure.BadInput;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

final class BuiltInProfileTest {
  private static final long GAP = 50_000_000L;
  private static final long[] MICRONS = {5123, -4, 0, 12_000, -1250};

  @ParameterizedTest
  @EnumSource
  void exampleIsWhatTheSenderSendsAndReads5123(BuiltInProfile built) {
    assertEquals(
        built.example(), Bytes.text(Sender.frame(built, 5123), 0, built.example().length()));
    List<Decoded> out = new ArrayList<>();
    Decoder decoder = Decoders.of(built.profile());
    decoder.idle(0, out::add);
    byte[] bytes = Bytes.of(built.example());
    decoder.feed(bytes, 0, bytes.length, 1, out::add);
    decoder.idle(1 + GAP, out::add);
    Decoded.Value value = (Decoded.Value) out.get(0);
    assertEquals(5_123_000, value.valueNm());
    assertEquals(built == BuiltInProfile.BUTTON_MM_LINES, value.button());
  }

  @ParameterizedTest
  @EnumSource
  void everyCutGivesTheSameValues(BuiltInProfile built) {
    List<byte[]> frames = new ArrayList<>();
    for (long microns : MICRONS) {
      frames.add(Sender.frame(built, microns));
    }
    List<String> whole = read(built, frames, Integer.MAX_VALUE, 0);
    assertEquals(
        MICRONS.length,
        whole.stream().filter(t -> t.startsWith("value")).count()
            / (built == BuiltInProfile.TWO_VALUE_MM_LINES ? 2 : 1));
    int total = frames.stream().mapToInt(f -> f.length).sum();
    for (int first = 0; first < total; first++) {
      assertEquals(whole, read(built, frames, first, 1), "cut at " + first);
    }
    assertEquals(whole, read(built, frames, 0, 1), "byte by byte");
  }

  /** Fed in pieces of {@code step} after the first; the pauses between frames stay. */
  private static List<String> read(BuiltInProfile built, List<byte[]> frames, int first, int step) {
    List<String> out = new ArrayList<>();
    Decoder decoder = Decoders.of(built.profile());
    decoder.idle(0, d -> {});
    int at = 0;
    long nanos = GAP;
    for (byte[] frame : frames) {
      int cut = Math.max(0, Math.min(frame.length, first - at));
      decoder.feed(frame, 0, cut, nanos, d -> out.add(told(d)));
      int size = step == 1 && first == 0 ? 1 : frame.length;
      for (int from = cut; from < frame.length; from += size) {
        int to = Math.min(frame.length, from + size);
        decoder.feed(frame, from, to, nanos, d -> out.add(told(d)));
      }
      at += frame.length;
      nanos += GAP;
    }
    decoder.idle(nanos, d -> out.add(told(d)));
    return out;
  }

  private static String told(Decoded decoded) {
    return (decoded instanceof Decoded.Value ? "value " : "") + Fed.told(decoded);
  }

  @Test
  void anUnknownNameIsRefusedWithThoseThereAre() {
    BadInput refused = assertThrows(BadInput.class, () -> BuiltInProfile.named("nothing"));
    assertTrue(refused.faults().get(0).allowed().toString().contains("signed-mm-lines"));
    assertEquals(BuiltInProfile.UNIT_LINES, BuiltInProfile.named("unit-lines"));
  }

  @ParameterizedTest
  @EnumSource
  void hasItsRowInTheDocuments(BuiltInProfile built) throws IOException {
    assertRow("| `" + built.plainName() + "` |");
  }

  @ParameterizedTest
  @EnumSource
  void kindsOfDecoderHaveTheirRows(DecoderKind kind) throws IOException {
    assertRow("| `" + kind + "` |");
  }

  private static void assertRow(String begin) throws IOException {
    assertTrue(
        Files.readString(Path.of("src/docs/stations.md")).contains(begin),
        () -> "src/docs/stations.md has no row " + begin);
  }
}
