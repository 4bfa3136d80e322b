package org.chordlog.bench;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Locale;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.chordlog.decode.BuiltInProfile;
import org.chordlog.decode.Decoder;
import org.chordlog.decode.Decoders;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.openjdk.jmh.infra.Blackhole;

/** Lines a second through the decoder, beside a bare splitter that copies each line. */
@State(Scope.Thread)
@BenchmarkMode(Mode.Throughput)
@OutputTimeUnit(TimeUnit.SECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(1)
public class DecodeBench {
  private static final int LINES = 10_000;
  private static final int CHUNK = 512;
  private final byte[] plain = lines("%+07.3f\r\n");
  private final byte[] status = lines("S %+07.3f mm\r\n");
  private final Decoder signed = Decoders.of(BuiltInProfile.SIGNED_MM_LINES.profile());
  private final Decoder pattern = Decoders.of(BuiltInProfile.STATUS_LINES.profile());

  private static byte[] lines(String form) {
    Random random = new Random(1);
    StringBuilder text = new StringBuilder();
    for (int i = 0; i < LINES; i++) {
      text.append(String.format(Locale.ROOT, form, random.nextInt(24_001) / 1000.0 - 12));
    }
    return text.toString().getBytes(StandardCharsets.ISO_8859_1);
  }

  @Benchmark
  @OperationsPerInvocation(LINES)
  public void bareSplitter(Blackhole hole) {
    int start = 0;
    for (int at = 0; at < plain.length; at++) {
      if (plain[at] == '\n') {
        hole.consume(Arrays.copyOfRange(plain, start, at));
        start = at + 1;
      }
    }
  }

  @Benchmark
  @OperationsPerInvocation(LINES)
  public void plainLines(Blackhole hole) {
    feed(signed, plain, hole);
  }

  @Benchmark
  @OperationsPerInvocation(LINES)
  public void patternLines(Blackhole hole) {
    feed(pattern, status, hole);
  }

  private static void feed(Decoder decoder, byte[] bytes, Blackhole hole) {
    for (int at = 0; at < bytes.length; at += CHUNK) {
      decoder.feed(bytes, at, Math.min(bytes.length, at + CHUNK), at, hole::consume);
    }
  }
}
