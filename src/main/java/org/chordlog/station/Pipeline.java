package org.chordlog.station;

import java.util.HexFormat;
import java.util.function.Consumer;
import org.chordlog.capture.Capture;
import org.chordlog.capture.CaptureOutcome;
import org.chordlog.capture.Direction;
import org.chordlog.capture.StreamDoubt;
import org.chordlog.capture.StreamWatch;
import org.chordlog.decode.ChannelCombiner;
import org.chordlog.decode.Combination;
import org.chordlog.decode.Decoded;
import org.chordlog.decode.Decoder;
import org.chordlog.decode.Decoders;
import org.chordlog.measure.LengthUnit;
import org.chordlog.measure.Sample;
import org.jspecify.annotations.Nullable;

/**
 * Bytes to samples, to the trace and the capture. Belongs to the station's thread; makes one object
 * a sample.
 */
final class Pipeline {
  /** What comes out of it. */
  interface Sink extends FeedStream.Sink {
    void sampled(Sample sample);

    void indicatorSays(Decoded.Status status);

    /** What was half captured is forgotten; values in the new unit are taken as they say. */
    void unitChanged(LengthUnit from, LengthUnit to, long nanos);

    void captured(CaptureOutcome outcome);

    /** The stream shows what can't be. */
    void doubted(StreamDoubt doubt);

    void frameRefused(Decoded.Damaged frame);

    void otherChannel(int channel);
  }

  private static final byte[] NOTHING = {};

  /** No indicator shows a kilometre. */
  private static final long MOST_NM = 1_000_000_000_000L;

  private final Decoder decoder;
  private final Capture capture;
  private final int channel;
  private final Direction direction;
  private final @Nullable ChannelCombiner combiner;
  private final @Nullable StreamWatch watch;
  private final @Nullable FeedStream feed;
  private final Consumer<StreamDoubt> onDoubt;
  private final TraceLog trace;
  private final Counters counters;
  private final Sink sink;
  private final Consumer<Decoded> onDecoded = this::decoded;
  private final Consumer<CaptureOutcome> onOutcome;
  private long sequence;
  private long wallMicros;
  private byte[] lastFrame = NOTHING;
  private byte[] rememberedFrame = NOTHING;
  private long rememberedSequence;
  private @Nullable LengthUnit unit;

  Pipeline(
      StationSettings settings,
      TraceLog trace,
      long lastSequence,
      Counters counters,
      @Nullable CountsInbox counts,
      Sink sink) {
    this.decoder = Decoders.of(settings.profile());
    this.capture = settings.newCapture();
    this.channel = settings.depthChannel();
    this.direction = settings.counts();
    this.combiner = combiner(settings.combine());
    this.trace = trace;
    this.sequence = lastSequence;
    this.counters = counters;
    this.sink = sink;
    this.onOutcome = sink::captured;
    this.onDoubt = sink::doubted;
    FeedSettings runsThrough = settings.feed();
    this.feed = runsThrough == null ? null : FeedStreams.of(runsThrough, counts, sink);
    this.watch =
        settings.sendsAlways() && feed == null ? new StreamWatch(settings.captureSettings()) : null;
  }

  private static @Nullable ChannelCombiner combiner(@Nullable Combination combination) {
    return combination == null ? null : new ChannelCombiner(combination);
  }

  void feed(byte[] bytes, int count, long nanos, long nowMicros) {
    wallMicros = nowMicros;
    catchUp();
    decoder.feed(bytes, 0, count, nanos, onDecoded);
    trace.flushIfDue(nanos);
  }

  void idle(long nanos, long nowMicros) {
    wallMicros = nowMicros;
    catchUp();
    decoder.idle(nanos, onDecoded);
    capture.elapsed(nanos);
    trace.flushIfDue(nanos);
  }

  private void catchUp() {
    if (feed != null) {
      feed.catchUp();
    }
  }

  /** The link was opened or lost: what was half seen is forgotten. */
  void gap() {
    decoder.reset();
    capture.reset();
    if (combiner != null) {
      combiner.reset();
    }
    if (feed != null) {
      feed.forget();
    }
    trace.flush();
  }

  void trigger(long nanos, long nowMicros, Consumer<CaptureOutcome> asker) {
    wallMicros = nowMicros;
    capture.trigger(nanos, asker);
  }

  /** What is shown in free air; null until it was seen. */
  @Nullable Long freeAirNm() {
    return capture.freeAirNm();
  }

  /** What was shown in free air before the stream began, and how far from it is still it. */
  void remember(long freeAirNm, long toNm) {
    if (watch != null) {
      watch.remember(freeAirNm, toNm);
    }
  }

  /** A zero was set. */
  void zeroed(long nanos) {
    if (watch != null) {
      watch.zeroed(nanos, onDoubt);
    }
  }

  void freeAirIs(long levelNm) {
    capture.freeAirIs(levelNm);
  }

  void meanMayErrBy(long standardErrorNm) {
    capture.meanMayErrBy(standardErrorNm);
  }

  byte @Nullable [] request(long nanos) {
    return decoder.request(nanos);
  }

  Capture.Phase phase() {
    return capture.phase();
  }

  String lastFrameHex() {
    return HexFormat.of().formatHex(lastFrame);
  }

  /** The frame that completed what was captured. */
  String frameHexOf(CaptureOutcome outcome) {
    boolean remembered =
        outcome instanceof CaptureOutcome.Captured captured
            && captured.depth().lastSequence() == rememberedSequence;
    return remembered ? HexFormat.of().formatHex(rememberedFrame) : lastFrameHex();
  }

  /** Before a reading is stored, so that its trace is never younger than itself. */
  void flushTrace() {
    trace.flush();
  }

  private void decoded(Decoded decoded) {
    if (decoded instanceof Decoded.Value value) {
      sample(value);
      Decoded.@Nullable Value combined = combiner == null ? null : combiner.offer(value);
      if (combined != null) {
        sample(combined);
      }
    } else if (decoded instanceof Decoded.Status status) {
      sink.indicatorSays(status);
    } else {
      refuse((Decoded.Damaged) decoded);
    }
  }

  private void refuse(Decoded.Damaged frame) {
    counters.damagedFrames.incrementAndGet();
    sink.frameRefused(frame);
  }

  private void sample(Decoded.Value value) {
    boolean length = feed != null && feed.isLength(value.channel());
    if (Math.abs(value.valueNm()) > MOST_NM && !length) {
      refuse(new Decoded.Damaged(value.monotonicNanos(), value.raw(), "beyond a kilometre"));
      return;
    }
    long nanos = value.monotonicNanos();
    Sample sample =
        new Sample(
            ++sequence,
            nanos,
            wallMicros,
            length ? value.valueNm() : direction.inwardNm(value.valueNm()),
            value.channel(),
            value.button());
    counters.samples.lazySet(counters.samples.get() + 1);
    trace.add(sample, nanos);
    if (value.channel() != channel) {
      otherChannel(sample);
      return;
    }
    lastFrame = value.raw();
    heedUnit(value);
    sink.sampled(sample);
    if (watch != null) {
      watch.offer(sample, onDoubt);
    }
    capture.offer(sample, onOutcome);
    remember(sample);
    if (feed != null) {
      feed.depth(sample);
    }
  }

  private void remember(Sample sample) {
    if (capture.remembers() == sample.sequence()) {
      rememberedSequence = sample.sequence();
      rememberedFrame = lastFrame;
    }
  }

  private void otherChannel(Sample sample) {
    if (feed != null && feed.isLength(sample.channel())) {
      feed.length(sample);
    } else {
      sink.otherChannel(sample.channel());
    }
  }

  private void heedUnit(Decoded.Value value) {
    @Nullable LengthUnit before = unit;
    unit = value.unit();
    if (before != null && before != value.unit()) {
      capture.reset();
      sink.unitChanged(before, value.unit(), value.monotonicNanos());
    }
  }
}
