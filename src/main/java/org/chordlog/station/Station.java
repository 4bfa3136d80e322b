package org.chordlog.station;

import java.util.Objects;
import java.util.concurrent.CompletableFuture;
import org.chordlog.capture.Capture;
import org.chordlog.capture.CaptureOutcome;
import org.chordlog.capture.StreamDoubt;
import org.chordlog.decode.Decoded;
import org.chordlog.link.LinkException;
import org.chordlog.measure.BadInput;
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
  private final ReadingIntake intake;
  private final StreamGuard guard;
  private final Reception reception;
  private final TraceLog trace;
  private final Pipeline pipeline;
  private final RecentValues recent;
  private final FootSwitch footSwitch = new FootSwitch();
  private volatile @Nullable String indicatorState;

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
    guard = new StreamGuard(name, around);
    intake = new ReadingIntake(settings, around, desk, counters, clock, guard);
    reception = new Reception(name, settings.depthChannel(), around.incidents());
    trace = new TraceLog(name, around.store().traces(), around.incidents());
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
    indicatorState = null;
    reception.opened(clock.nanos(), clock.micros());
    if (link.now().state() != LinkState.SILENT) {
      isOpen();
    }
  }

  /** After a silence that is only when a byte has come. */
  private void isOpen() {
    gaps.end(clock.micros());
    changeLink(LinkState.OPEN, "Open.");
  }

  @Override
  public void bytes(byte[] buffer, int count, long nanos) {
    if (link.now().state() == LinkState.SILENT) {
      isOpen();
    }
    reception.came(count);
    pipeline.feed(buffer, count, nanos, clock.microsAt(nanos));
    judgeReception(nanos);
  }

  private void judgeReception(long nanos) {
    LinkState before = link.now().state();
    if (before != LinkState.SILENT) {
      LinkState now = reception.state(nanos, clock.microsAt(nanos));
      if (now != before) {
        changeLink(now, reception.message());
      }
    }
  }

  @Override
  public void nothing(long nanos) {
    pipeline.idle(nanos, clock.microsAt(nanos));
    live.announce(nanos, pipeline.phase());
    judgeReception(nanos);
  }

  @Override
  public void lost(LinkException why, long stoodNanos) {
    pipeline.gap();
    reception.end(clock.micros());
    if (stoodNanos > 0) {
      gaps.lost(why, clock.micros());
    }
    changeLink(LinkWatch.after(why, stoodNanos > 0), String.valueOf(why.getMessage()));
  }

  @Override
  public void stopped() {
    pipeline.gap();
    reception.end(clock.micros());
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
      pipeline.trigger(nanos, clock.microsAt(nanos), this::captured);
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
    reception.read(sample.monotonicNanos());
    recent.add(sample.valueNm(), sample.monotonicNanos());
    intake.contact().saw(sample.valueNm());
    Capture.Phase phase = pipeline.phase();
    if (phase == Capture.Phase.FREE) {
      intake.contactEnded();
    }
    if (indicatorState != null) {
      indicatorState = null;
      announceState();
    }
    live.offer(sample, phase);
  }

  @Override
  public void indicatorSays(Decoded.Status status) {
    reception.read(status.monotonicNanos());
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
  public void frameRefused(Decoded.Damaged frame) {
    reception.refused(frame);
  }

  @Override
  public void otherChannel(int channel) {
    reception.otherChannel(channel);
  }

  @Override
  public void doubted(StreamDoubt doubt) {
    boolean frozen = doubt.kind() == StreamDoubt.Kind.FROZEN;
    if (frozen && desk.work().job() == null) {
      return;
    }
    guard.doubted(doubt, clock.microsAt(doubt.monotonicNanos()));
    if (!doubt.kind().forbidsReadings() && !frozen) {
      pipeline.freeAirIs(doubt.toNm());
    }
    announceState();
  }

  @Override
  public void captured(CaptureOutcome outcome) {
    var unused = take(outcome);
  }

  private CompletableFuture<TriggerAnswer> take(CaptureOutcome outcome) {
    if (outcome instanceof CaptureOutcome.Captured) {
      pipeline.flushTrace();
    }
    @Nullable String question = intake.question();
    CompletableFuture<TriggerAnswer> answer = intake.outcome(outcome, pipeline.lastFrameHex());
    if (!Objects.equals(question, intake.question())) {
      announceState();
    }
    return answer;
  }

  private void refused(CaptureOutcome.Rejected rejection) {
    var unused = intake.refused(rejection);
  }

  // --- on behalf of others, by the mailbox ---

  /** Done when the next rest is a committed reading, or a refusal is certain. */
  CompletableFuture<TriggerAnswer> trigger() {
    CompletableFuture<TriggerAnswer> answer = new CompletableFuture<>();
    long nanos = clock.nanos();
    pipeline.trigger(
        nanos,
        clock.microsAt(nanos),
        outcome -> {
          var unused =
              take(outcome)
                  .whenComplete(
                      (done, failure) -> {
                        if (failure == null) {
                          answer.complete(done);
                        } else {
                          answer.completeExceptionally(failure);
                        }
                      });
        });
    return answer;
  }

  /** The reading that the answer to the open question replaces; null if none. */
  @Nullable CompletableFuture<Reading> replaced() {
    return intake.replaced();
  }

  CompletableFuture<TriggerAnswer> confirm() {
    CompletableFuture<TriggerAnswer> answer = intake.confirmed();
    announceState();
    return answer;
  }

  boolean zeroMoved() {
    return guard.zeroMoved(desk.work().zero());
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
    intake.contact().standsOnNoPiece(value.valueNm());
    return new AtRest(value, intake.contact().reading());
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
    intake.onMasters(so);
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
            place.piece(),
            place.position(),
            place.pass(),
            intake.onMasters(),
            work.shift().person()),
        work.bridge() == null ? null : work.bridge().id(),
        work.zero() == null ? null : work.zero().id(),
        work.zeroStale(settings.zero(), clock.micros()),
        guard.zeroMoved(work.zero()),
        guard.words(work.zero()),
        intake.question());
  }
}
