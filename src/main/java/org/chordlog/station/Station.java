package org.chordlog.station;

import java.util.concurrent.CompletableFuture;
import org.chordlog.capture.Capture;
import org.chordlog.capture.CaptureOutcome;
import org.chordlog.decode.Decoded;
import org.chordlog.link.LinkException;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.CapturedDepth;
import org.chordlog.measure.ClockState;
import org.chordlog.measure.Job;
import org.chordlog.measure.Sample;
import org.chordlog.radius.ZeroEvaluation;
import org.chordlog.station.StationStatus.LinkState;
import org.jspecify.annotations.Nullable;

/** One station at work. All but {@link #status()} and what goes by the mailbox is its thread's. */
final class Station implements LinkLoop.Events, Pipeline.Sink {
  private static final long LIVE_NANOS = 100_000_000L;

  private final StationSettings settings;
  private final Surroundings around;
  private final Counters counters = new Counters();
  private final LinkWatch link;
  private final ClockWatch clockWatch;
  private final Desk desk;
  private final ReadingMaker maker;
  private final ReadingLog readingLog;
  private final TraceLog trace;
  private final Pipeline pipeline;
  private final RecentValues recent = new RecentValues();
  private final FootSwitch footSwitch = new FootSwitch();
  private @Nullable CompletableFuture<CapturedDepth> onMaster;
  private volatile @Nullable String indicatorState;
  private @Nullable Sample newest;
  private long liveNanos;
  private long sequence;

  Station(StationSettings settings, Surroundings around) {
    this.settings = settings;
    this.around = around;
    String name = settings.name();
    link = new LinkWatch(name, around.clock().wallMicros());
    clockWatch = new ClockWatch((expected, found) -> {});
    desk = new Desk(settings, around.store());
    maker = new ReadingMaker(name, settings.zero());
    readingLog = new ReadingLog(around.store().readings(), around.announcer(), counters);
    trace = new TraceLog(name, around.store().traces());
    sequence = around.store().readings().lastSequence(name);
    pipeline =
        new Pipeline(
            settings.profile().decoder(),
            settings.newCapture(),
            settings.channel(),
            trace,
            around.store().traces().lastSequence(name),
            counters,
            this);
    desk.refresh(around.clock().monotonicNanos());
  }

  StationSettings settings() {
    return settings;
  }

  Desk desk() {
    return desk;
  }

  // --- the link ---

  @Override
  public void opened() {
    counters.openings.incrementAndGet();
    pipeline.gap();
    indicatorState = null;
    changeLink(LinkState.OPEN, "Open.");
  }

  @Override
  public void bytes(byte[] buffer, int count, long nanos) {
    pipeline.feed(buffer, count, nanos, look(nanos));
  }

  @Override
  public void nothing(long nanos) {
    pipeline.idle(nanos, look(nanos));
    announceLive(nanos);
  }

  private long look(long nanos) {
    long wall = around.clock().wallMicros();
    clockWatch.look(wall, nanos);
    return wall;
  }

  @Override
  public void lost(LinkException why, long stoodNanos) {
    pipeline.gap();
    changeLink(LinkWatch.after(why, stoodNanos > 0), String.valueOf(why.getMessage()));
  }

  @Override
  public void stopped() {
    pipeline.gap();
    changeLink(LinkState.STOPPED, "Stopped.");
  }

  @Override
  public byte @Nullable [] request(long nanos) {
    return pipeline.request(nanos);
  }

  @Override
  public void footSwitch(boolean closed, long nanos) {
    if (footSwitch.pressed(closed, nanos)) {
      pipeline.trigger(nanos, look(nanos));
    }
  }

  private void changeLink(LinkState state, String message) {
    if (link.change(state, message, around.clock().wallMicros())) {
      announceState();
    }
  }

  // --- what comes of the bytes ---

  @Override
  public void sampled(Sample sample) {
    newest = sample;
    recent.add(sample.valueNm(), sample.monotonicNanos());
    if (indicatorState != null) {
      indicatorState = null;
      announceState();
    }
    if (sample.monotonicNanos() - liveNanos >= LIVE_NANOS) {
      announceLive(sample.monotonicNanos());
    }
  }

  @Override
  public void indicatorSays(Decoded.Status status) {
    String says = status.kind().name();
    if (!says.equals(indicatorState)) {
      indicatorState = says;
      announceState();
    }
  }

  @Override
  public void captured(CaptureOutcome outcome) {
    if (outcome instanceof CaptureOutcome.Rejected rejected) {
      refused(rejected);
    } else if (outcome instanceof CaptureOutcome.Captured captured) {
      taken(captured.depth());
    }
  }

  private void taken(CapturedDepth depth) {
    @Nullable CompletableFuture<CapturedDepth> waiting = onMaster;
    if (waiting != null) {
      onMaster = null;
      waiting.complete(depth);
      return;
    }
    desk.refresh(depth.monotonicNanos());
    ClockState clock = clockWatch.stateAt(depth.wallMicros());
    ReadingMaker.Result result =
        maker.make(depth, desk.work(), desk.place(), sequence + 1, clock, pipeline.lastFrameHex());
    if (result instanceof ReadingMaker.Result.Made made) {
      sequence++;
      pipeline.flushTrace();
      desk.advance(made.reading());
      readingLog.append(made.reading());
    } else if (result instanceof ReadingMaker.Result.Refused refusal) {
      refused(refusal.rejection());
    }
  }

  private void refused(CaptureOutcome.Rejected rejection) {
    counters.rejected(rejection.reason());
    around.announcer().announce(new Announcement.Refused(settings.name(), rejection));
  }

  // --- on behalf of others, by the mailbox ---

  void trigger() {
    long nanos = around.clock().monotonicNanos();
    pipeline.trigger(nanos, look(nanos));
  }

  /** The next depth that is captured goes there, and makes no reading; null for no longer. */
  void captureOnMaster(@Nullable CompletableFuture<CapturedDepth> waiting) {
    if (onMaster != null) {
      onMaster.completeExceptionally(
          new BadInput("station", settings.name(), "was asked anew", "one master at a time"));
    }
    onMaster = waiting;
  }

  /** Zero from the newest values; {@link BadInput} while the plunger moves or hangs in free air. */
  ZeroEvaluation evaluateZero() {
    if (pipeline.phase() == Capture.Phase.FREE) {
      throw new BadInput(
          "zero", "free air", "is no flat", "the bridge standing still on a flat face");
    }
    long tolerance = ZeroEvaluation.stillnessNm(settings.indicator());
    return ZeroEvaluation.of(
        recent.since(around.clock().monotonicNanos()), tolerance, RecentValues.LEAST_COUNT);
  }

  void goTo(Place place) {
    desk.goTo(place);
    announceState();
  }

  void refresh() {
    desk.refresh(around.clock().monotonicNanos());
    announceState();
  }

  // --- telling ---

  private void announceLive(long nanos) {
    @Nullable Sample sample = newest;
    if (sample == null) {
      return;
    }
    newest = null;
    liveNanos = nanos;
    desk.refreshIfOld(nanos);
    Work work = desk.work();
    @Nullable Long depthNm = work.zero() == null ? null : sample.valueNm() - work.zeroNm();
    around
        .announcer()
        .announce(
            new Announcement.Live(
                settings.name(),
                sample.wallMicros(),
                sample.valueNm(),
                depthNm,
                radiusMm(work, depthNm),
                pipeline.phase()));
  }

  private static @Nullable Double radiusMm(Work work, @Nullable Long depthNm) {
    Work.@Nullable Computed computed = work.computed();
    if (depthNm == null || computed == null) {
      return null;
    }
    try {
      return computed.model().estimate(depthNm, 0, 1).radiusMm();
    } catch (BadInput e) {
      return null;
    }
  }

  void announceState() {
    around.announcer().announce(new Announcement.State(settings.name(), status()));
  }

  StationStatus status() {
    LinkWatch.Now now = link.now();
    Work work = desk.work();
    Place place = desk.place();
    @Nullable Job job = work.job();
    return new StationStatus(
        settings.name(),
        settings.machine(),
        now.state(),
        now.message(),
        settings.link().target(),
        now.sinceMicros(),
        indicatorState,
        counters.snapshot(trace.dropped()),
        job == null ? null : job.id(),
        place.piece(),
        place.position(),
        work.bridge() == null ? null : work.bridge().id(),
        work.zero() == null ? null : work.zero().id(),
        work.zeroStale(settings.zero(), around.clock().wallMicros()));
  }
}
