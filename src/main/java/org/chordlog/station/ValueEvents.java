package org.chordlog.station;

import java.util.Objects;
import java.util.concurrent.CompletableFuture;
import org.chordlog.capture.Capture;
import org.chordlog.capture.CaptureOutcome;
import org.chordlog.capture.StreamDoubt;
import org.chordlog.decode.Decoded;
import org.chordlog.measure.Incident;
import org.chordlog.measure.LengthUnit;
import org.chordlog.measure.Sample;
import org.jspecify.annotations.Nullable;

/**
 * What a station does with what its bytes turn out to be: values, states of the indicator, captured
 * depths. Called by the station's thread alone; any thread may read the indicator's state.
 */
final class ValueEvents implements Pipeline.Sink {
  private final StationParts parts;
  private final Runnable announceState;
  private final Pipeline pipeline;
  private volatile @Nullable String indicatorState;

  ValueEvents(StationParts parts, Runnable announceState) {
    this.parts = parts;
    this.announceState = announceState;
    this.pipeline =
        new Pipeline(
            parts.settings,
            parts.trace,
            parts.lastSampleSequence(),
            parts.counters,
            parts.counts,
            this);
  }

  Pipeline pipeline() {
    return pipeline;
  }

  /** What the indicator says of itself, as overrange; null while it sends values. */
  @Nullable String indicatorState() {
    return indicatorState;
  }

  /** The link was opened: what was seen before says nothing about now. */
  void forget() {
    gap();
    parts.recent.clear();
    indicatorState = null;
  }

  @Override
  public void sampled(Sample sample) {
    parts.reception.read(sample.monotonicNanos());
    parts.recent.add(sample.valueNm(), sample.monotonicNanos());
    parts.intake.contact().saw(sample.valueNm());
    Capture.Phase phase = pipeline.phase();
    if (phase == Capture.Phase.FREE) {
      parts.intake.contactEnded();
    }
    indicatorIs(null);
    parts.live.offer(sample, phase);
  }

  /** The link was opened or lost: what was half seen is forgotten, a piece under way too. */
  void gap() {
    pipeline.gap();
    if (parts.line != null) {
      parts.line.gap(pipeline.lastFrameHex());
    }
  }

  @Override
  public void runsThrough(Sample depth, long lengthNm) {
    if (parts.line != null) {
      parts.line.offer(depth, lengthNm, pipeline);
    }
  }

  @Override
  public void lengthKnown(boolean known) {
    if (parts.line != null) {
      parts.line.lengthKnown(known, pipeline.lastFrameHex());
    }
    announceState.run();
  }

  @Override
  public void indicatorSays(Decoded.Status status) {
    parts.reception.read(status.monotonicNanos());
    indicatorIs(status.kind().name());
  }

  private void indicatorIs(@Nullable String state) {
    if (!Objects.equals(state, indicatorState)) {
      indicatorState = state;
      announceState.run();
    }
  }

  @Override
  public void unitChanged(LengthUnit from, LengthUnit to, long nanos) {
    String detail = "The indicator was switched from " + from + " to " + to + ".";
    long now = parts.clock.microsAt(nanos);
    Incident.Kind kind = Incident.Kind.UNIT_CHANGED;
    parts.around.incidents().add(new Incident(0, parts.settings.name(), kind, now, now, 0, detail));
    var unused =
        parts.intake.refused(
            new CaptureOutcome.Rejected(CaptureOutcome.Reason.UNIT_CHANGED, nanos, detail));
  }

  @Override
  public void frameRefused(Decoded.Damaged frame) {
    parts.reception.refused(frame);
  }

  @Override
  public void otherChannel(int channel) {
    parts.reception.otherChannel(channel);
  }

  @Override
  public void doubted(StreamDoubt doubt) {
    boolean frozen = doubt.kind() == StreamDoubt.Kind.FROZEN;
    if (frozen && parts.current.work().job() == null) {
      return;
    }
    parts.guard.doubted(
        doubt.shownBy(parts.settings.counts()), parts.clock.microsAt(doubt.monotonicNanos()));
    if (!doubt.kind().forbidsReadings() && !frozen) {
      pipeline.freeAirIs(doubt.toNm());
    }
    announceState.run();
  }

  @Override
  public void captured(CaptureOutcome outcome) {
    var unused = take(outcome);
  }

  /** Done when the reading is committed or the refusal is certain. */
  CompletableFuture<TriggerAnswer> take(CaptureOutcome outcome) {
    if (outcome instanceof CaptureOutcome.Captured) {
      pipeline.flushTrace();
    }
    @Nullable OpenQuestion question = parts.intake.question();
    CompletableFuture<TriggerAnswer> answer =
        parts.intake.outcome(outcome, pipeline.frameHexOf(outcome));
    if (!Objects.equals(question, parts.intake.question())) {
      announceState.run();
    }
    return answer;
  }
}
