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
  private final long idleNanos;
  private final boolean startIsCertain;
  private final Frame frame = new Frame();
  private final Consumer<Decoded> counting = this::count;
  private Consumer<Decoded> sink = FrameDecoder::nowhere;
  private long values;
  private long statuses;
  private long lastNanos;

  /** Nothing was seen yet of a stream that may have begun before. */
  private boolean fresh = true;

  FrameDecoder(FrameProfile profile, Framer framer, FrameReader reader, Polls polls) {
    this.profile = profile;
    this.framer = framer;
    this.reader = reader;
    this.polls = polls;
    idleNanos = profile.framing().idleMs() * 1_000_000L;
    startIsCertain = profile.startIsCertain();
  }

  @Override
  public void feed(byte[] bytes, int from, int to, long nanos, Consumer<Decoded> receiver) {
    sink = receiver;
    if (to > from) {
      pause(nanos);
      lastNanos = nanos;
      cut(bytes, from, to, nanos);
    }
    done();
  }

  private void cut(byte[] bytes, int from, int to, long nanos) {
    if (!profile.sevenBit()) {
      framer.feed(bytes, from, to, nanos, this);
      return;
    }
    byte[] masked = Stream7.masked(Bytes.copy(bytes, from, to));
    framer.feed(masked, 0, masked.length, nanos, this);
  }

  @Override
  public void idle(long nanos, Consumer<Decoded> receiver) {
    sink = receiver;
    pause(nanos);
    fresh &= framer.holds();
    done();
  }

  private void pause(long nanos) {
    if (idleNanos > 0 && nanos - lastNanos >= idleNanos && framer.holds()) {
      framer.pause(lastNanos, this);
      fresh = false;
    }
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
    frame.set(bytes, from, to, nanos);
    String reason = reader.read(frame, counting);
    if (reason == null) {
      polls.answered();
    }
    return reason;
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
    Decoded.Damaged refused = new Decoded.Damaged(nanos, Bytes.copy(bytes, from, to), reason);
    log.add(refused);
    sink.accept(refused);
  }

  @Override
  public void reset() {
    framer.reset();
    polls.reset();
    fresh = true;
  }

  @Override
  public byte @Nullable [] request(long nanos) {
    byte[] request = polls.request(nanos, log);
    fresh &= request == null;
    return request;
  }

  @Override
  public DecodeCounts counts() {
    return log.counts();
  }
}
