package org.chordlog.store.sql;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToLongFunction;
import org.chordlog.measure.Sample;

/**
 * Samples in few bytes, column by column: differences, divided by the values' common step,
 * deflated. Values and sequences come back exact, times to 0.1 ms (rounded down).
 */
public final class SampleBlock {
  private static final long TICK_NANOS = 100_000;
  private static final long TICK_MICROS = 100;

  private SampleBlock() {}

  static byte[] encode(List<Sample> samples) {
    Varints.Writer out = new Varints.Writer(samples.size() * 6);
    long step = step(samples);
    out.write(samples.size());
    out.write(step);
    column(out, samples, Sample::sequence);
    column(out, samples, sample -> sample.valueNm() / step);
    secondDifferences(out, samples);
    column(out, samples, SampleBlock::wallLead);
    column(out, samples, sample -> sample.channel() * 2L + (sample.button() ? 1 : 0));
    return Deflation.deflate(out.bytes());
  }

  public static List<Sample> decode(byte[] packed) {
    Varints.Reader in = new Varints.Reader(Deflation.inflate(packed));
    int count = (int) in.next();
    long step = in.next();
    long[] sequence = column(in, count);
    long[] value = column(in, count);
    long[] ticks = sums(column(in, count));
    long[] wallLead = column(in, count);
    long[] flags = column(in, count);
    List<Sample> samples = new ArrayList<>(count);
    for (int i = 0; i < count; i++) {
      samples.add(sample(sequence[i], ticks[i], wallLead[i], value[i] * step, flags[i]));
    }
    return samples;
  }

  private static Sample sample(long sequence, long ticks, long wallLead, long valueNm, long flags) {
    return new Sample(
        sequence,
        ticks * TICK_NANOS,
        (ticks + wallLead) * TICK_MICROS,
        valueNm,
        (int) (flags >> 1),
        (flags & 1) != 0);
  }

  private static long ticks(Sample sample) {
    return Math.floorDiv(sample.monotonicNanos(), TICK_NANOS);
  }

  private static long wallLead(Sample sample) {
    return Math.floorDiv(sample.wallMicros(), TICK_MICROS) - ticks(sample);
  }

  private static void column(
      Varints.Writer out, List<Sample> samples, ToLongFunction<Sample> field) {
    long before = 0;
    for (Sample sample : samples) {
      long now = field.applyAsLong(sample);
      out.write(now - before);
      before = now;
    }
  }

  private static void secondDifferences(Varints.Writer out, List<Sample> samples) {
    long before = 0;
    long gapBefore = 0;
    for (Sample sample : samples) {
      long now = ticks(sample);
      out.write(now - before - gapBefore);
      gapBefore = now - before;
      before = now;
    }
  }

  private static long[] column(Varints.Reader in, int count) {
    long[] column = new long[count];
    for (int i = 0; i < count; i++) {
      column[i] = in.next();
    }
    return sums(column);
  }

  private static long[] sums(long[] differences) {
    for (int i = 1; i < differences.length; i++) {
      differences[i] += differences[i - 1];
    }
    return differences;
  }

  /** Greatest common divisor of the values, at least 1. */
  private static long step(List<Sample> samples) {
    long divisor = 0;
    for (Sample sample : samples) {
      divisor = commonDivisor(divisor, sample.valueNm());
    }
    return Math.max(1, Math.abs(divisor));
  }

  private static long commonDivisor(long a, long b) {
    while (b != 0) {
      long rest = a % b;
      a = b;
      b = rest;
    }
    return a;
  }
}
