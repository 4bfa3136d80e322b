package org.chordlog.store.sql;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.Size;
import org.chordlog.measure.Sample;
import org.junit.jupiter.api.Test;

final class SampleBlockTest {
  @Property(tries = 300)
  void anythingComesBackExactButForTheTimesBelowATick(
      @ForAll @Size(min = 1, max = 60) List<Long> values, @ForAll int channel) {
    List<Sample> samples = new ArrayList<>();
    for (long value : values) {
      long time = value / 16;
      samples.add(new Sample(value, time, time / 7, value, channel, value % 2 == 0));
    }
    List<Sample> back = SampleBlock.decode(SampleBlock.encode(samples));
    assertEquals(samples.stream().map(SampleBlockTest::ticked).toList(), back);
  }

  private static Sample ticked(Sample sample) {
    return new Sample(
        sample.sequence(),
        Math.floorDiv(sample.monotonicNanos(), 100_000L) * 100_000,
        Math.floorDiv(sample.wallMicros(), 100L) * 100,
        sample.valueNm(),
        sample.channel(),
        sample.button());
  }

  @Test
  void extremesComeBack() {
    List<Sample> samples =
        List.of(
            new Sample(Long.MAX_VALUE, 0, 0, Long.MIN_VALUE, Integer.MAX_VALUE, true),
            new Sample(0, 0, 0, Long.MAX_VALUE, 0, false),
            new Sample(1, 0, 0, 0, Integer.MIN_VALUE, true));
    assertEquals(samples, SampleBlock.decode(SampleBlock.encode(samples)));
  }

  /** Their difference does not fit a long: a step taken from differences came out wrong. */
  @Test
  void valuesFurtherApartThanALongComeBack() {
    List<Sample> samples =
        List.of(
            new Sample(0, 0, 0, 9_223_372_036_854_605_760L, 0, true),
            new Sample(1, 0, 0, -170_050, 0, true));
    assertEquals(samples, SampleBlock.decode(SampleBlock.encode(samples)));
  }

  @Test
  void restingValuesCostNextToNothing() {
    List<Sample> samples = new ArrayList<>();
    for (int i = 0; i < 4_096; i++) {
      samples.add(new Sample(i, i * 50_000_000L, i * 50_000L, 2_760_000, 0, false));
    }
    assertTrue(SampleBlock.encode(samples).length < 200);
  }
}
