package org.chordlog.decode;

import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/** Cuts a stream into frames and reads them. */
final class FrameDecoder implements Decoder, Framer.Sink {
  private final FrameProfile profile;
  private final Framer framer;
  private final FrameReader reader;
  private final Polls polls;
  private final DecodeLog log = new DecodeLog();
  private final boolean startIsCertain;
  private final Consumer<Decoded> counting = this::count;
  private Consumer<Decoded> sink = FrameDecoder::nowhere;
  private long values;
  private long statuses;
  private boolean fresh = true;

  FrameDecoder(FrameProfile profile, Framer framer, FrameReader reader) {
    this.profile = profile;
    this.framer = framer;
    this.reader = reader;
    polls = new Polls(profile.polling());
    startIsCertain = profile.startIsCertain();
  }

  @Override
  public void feed(byte[] bytes, int from, int to, long nanos, Consumer<Decoded> receiver) {
    sink = receiver;
    if (profile.sevenBit()) {
      byte[] masked = masked(bytes, from, to);
      framer.feed(masked, 0, masked.length, nanos, this);
    } else {
      framer.feed(bytes, from, to, nanos, this);
    }
    done();
  }

  private static byte[] masked(byte[] bytes, int from, int to) {
    byte[] copy = Bytes.copy(bytes, from, to);
    for (int i = 0; i < copy.length; i++) {
      copy[i] &= 0x7F;
    }
    return copy;
  }

  @Override
  public void idle(long nanos, Consumer<Decoded> receiver) {
    sink = receiver;
    framer.idle(nanos, this);
    fresh &= framer.holds();
    done();
  }

  private static void nowhere(Decoded decoded) {}

  private void done() {
    sink = FrameDecoder::nowhere;
    log.add(values, statuses);
    values = 0;
    statuses = 0;
  }

  @Override
  public @Nullable String frame(byte[] bytes, int from, int to, long nanos) {
    boolean first = fresh;
    fresh = false;
    if (first && !startIsCertain) {
      return "first since opening, may have lost its beginning";
    }
    return reader.read(bytes, from, to, nanos, counting);
  }

  private void count(Decoded decoded) {
    if (decoded instanceof Decoded.Value) {
      values++;
    } else {
      statuses++;
    }
    sink.accept(decoded);
  }

  @Override
  public void damaged(byte[] bytes, int from, int to, long nanos, String reason) {
    fresh = false;
    Decoded.Damaged frame = new Decoded.Damaged(nanos, Bytes.copy(bytes, from, to), reason);
    log.add(frame);
    sink.accept(frame);
  }

  @Override
  public void reset() {
    framer.reset();
    polls.reset();
    fresh = true;
  }

  @Override
  public byte @Nullable [] request(long nanos) {
    return polls.request(nanos);
  }

  @Override
  public DecodeCounts counts() {
    return log.counts();
  }
}
