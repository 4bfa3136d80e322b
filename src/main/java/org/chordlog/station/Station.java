package org.chordlog.station;

import org.chordlog.capture.Capture;
import org.chordlog.capture.CaptureOutcome;
import org.chordlog.decode.Decoded;
import org.chordlog.link.LinkException;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.CapturedDepth;
import org.chordlog.measure.ClockState;
import org.chordlog.measure.Incident;
import org.chordlog.measure.Job;
import org.chordlog.measure.LengthUnit;
import org.chordlog.measure.Reading;
import org.chordlog.measure.Sample;
import org.chordlog.radius.ZeroEvaluation;
import org.chordlog.station.StationStatus.LinkState;
import org.jspecify.annotations.Nullable;

/** One station at work. All but {@link #status()} and what goes by the mailbox is its thread's. */
final class Station implements LinkLoop.Events, Pipeline.Sink {
  private final StationSettings settings;
  private final StationContext around;
  private final Counters counters = new Counters();
  private final LinkWatch link;
  private final WatchedClock clock;
  private final Gaps gaps;
  private final CurrentWork desk;
  private final LiveValue live;
  private final ReadingMaker maker;
  private final ReadingLog readingLog;
  private final TraceLog trace;
  private final Pipeline pipeline;
  private final RecentValues recent;
  private final FootSwitch footSwitch = new FootSwitch();
  private volatile @Nullable String indicatorState;
  private long sequence;
  private final PresentContact contact = new PresentContact();
  private volatile boolean onMasters;

  Station(StationSettings settings, StationContext around) {
    this.settings = settings;
    this.around = around;
    String name = settings.name();
    clock = new WatchedClock(name, around);
    link = new LinkWatch(name, clock.micros());
    gaps = new Gaps(name, around.incidents());
    desk = new CurrentWork(settings, around.store());
    recent = new RecentValues(settings.stillNanos());
    live = new LiveValue(name, desk, around.announcer());
    maker = new ReadingMaker(name, settings.zero());
    readingLog = new ReadingLog(around, counters);
    trace = new TraceLog(name, around.store().traces(), around.incidents());
    sequence = around.store().readings().lastSequence(name);
    pipeline =
        new Pipeline(settings, trace, around.store().traces().lastSequence(name), counters, this);
    desk.refresh(clock.nanos());
  }

  StationSettings settings() {
    return settings;
  }

  // --- the link ---

  @Override
  public void opened() {
    counters.openings.incrementAndGet();
    pipeline.gap();
    recent.clear();
    gaps.end(clock.micros());
    indicatorState = null;
    changeLink(LinkState.OPEN, "Open.");
  }

  @Override
  public void bytes(byte[] buffer, int count, long nanos) {
    pipeline.feed(buffer, count, nanos, clock.microsAt(nanos));
  }

  @Override
  public void nothing(long nanos) {
    pipeline.idle(nanos, clock.microsAt(nanos));
    live.announce(nanos, pipeline.phase());
  }

  @Override
  public void lost(LinkException why, long stoodNanos) {
    pipeline.gap();
    if (stoodNanos > 0) {
      gaps.lost(why, clock.micros());
    }
    changeLink(LinkWatch.after(why, stoodNanos > 0), String.valueOf(why.getMessage()));
  }

  @Override
  public void stopped() {
    pipeline.gap();
    gaps.end(clock.micros());
    changeLink(LinkState.STOPPED, "Stopped.");
  }

  @Override
  public byte @Nullable [] request(long nanos) {
    return pipeline.request(nanos);
  }

  @Override
  public void footSwitch(boolean closed, long nanos) {
    if (footSwitch.pressed(closed, nanos)) {
      pipeline.trigger(nanos, clock.microsAt(nanos));
    }
  }

  private void changeLink(LinkState state, String message) {
    if (link.change(state, message, clock.micros())) {
      announceState();
    }
  }

  // --- what comes of the bytes ---

  @Override
  public void sampled(Sample sample) {
    recent.add(sample.valueNm(), sample.monotonicNanos());
    contact.saw(sample.valueNm());
    Capture.Phase phase = pipeline.phase();
    if (phase == Capture.Phase.FREE) {
      contact.ended();
    }
    if (indicatorState != null) {
      indicatorState = null;
      announceState();
    }
    live.offer(sample, phase);
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
  public void unitChanged(LengthUnit from, LengthUnit to, long nanos) {
    String detail = "The indicator was switched from " + from + " to " + to + ".";
    long now = clock.microsAt(nanos);
    Incident.Kind kind = Incident.Kind.UNIT_CHANGED;
    around.incidents().add(new Incident(0, settings.name(), kind, now, now, 0, detail));
    refused(new CaptureOutcome.Rejected(CaptureOutcome.Reason.UNIT_CHANGED, nanos, detail));
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
    if (onMasters) {
      refused(
          new CaptureOutcome.Rejected(
              CaptureOutcome.Reason.ON_MASTERS,
              depth.monotonicNanos(),
              "the job is suspended while masters are measured"));
      return;
    }
    if (contact.onNoPiece()) {
      refused(
          new CaptureOutcome.Rejected(
              CaptureOutcome.Reason.NO_PIECE,
              depth.monotonicNanos(),
              "the bridge stands on a flat or a master"));
      return;
    }
    desk.refresh(depth.monotonicNanos());
    ClockState clockState = clock.stateAt(depth.wallMicros());
    ReadingMaker.Result result =
        maker.make(
            depth, desk.work(), desk.place(), sequence + 1, clockState, pipeline.lastFrameHex());
    if (result instanceof ReadingMaker.Result.Made made) {
      sequence++;
      pipeline.flushTrace();
      desk.advance(made.reading());
      contact.gave(readingLog.append(made.reading()));
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
    long nanos = clock.nanos();
    pipeline.trigger(nanos, clock.microsAt(nanos));
  }

  /** From the newest values; {@link BadInput} while the plunger moves or hangs in free air. */
  AtRest atRest() {
    if (pipeline.phase() == Capture.Phase.FREE) {
      throw new BadInput(
          "plunger",
          "in free air",
          "was not seen to be pushed in",
          "the bridge set down and standing still; lift it once if it stands already");
    }
    long tolerance = ZeroEvaluation.stillnessNm(settings.indicator());
    long[] values = recent.since(clock.nanos());
    ZeroEvaluation value = ZeroEvaluation.of(values, tolerance, RecentValues.LEAST_COUNT);
    contact.standsOnNoPiece(value.valueNm());
    return new AtRest(value, contact.reading());
  }

  Place place() {
    return desk.place();
  }

  Place goTo(Place place) {
    desk.goTo(place);
    announceState();
    return desk.place();
  }

  /** Back to where that reading was taken, if its job is still the one worked on. */
  void returnTo(Reading reading) {
    @Nullable Job job = desk.work().job();
    if (job != null && job.id() == reading.jobId()) {
      goTo(Place.of(reading).on(job.plan()));
    }
  }

  /** While masters are measured the job is suspended: nothing captured becomes a reading. */
  void onMasters(boolean so) {
    onMasters = so;
    announceState();
  }

  void refresh() {
    desk.refresh(clock.nanos());
    announceState();
  }

  // --- telling ---

  void announceState() {
    around.announcer().announce(new Announcement.State(settings.name(), status()));
  }

  StationStatus status() {
    LinkWatch.Now now = link.now();
    WorkSnapshot work = desk.work();
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
        new StationStatus.PlaceNow(
            place.piece(), place.position(), place.pass(), onMasters, work.shift().person()),
        work.bridge() == null ? null : work.bridge().id(),
        work.zero() == null ? null : work.zero().id(),
        work.zeroStale(settings.zero(), clock.micros()));
  }
}
