package org.chordlog.station;

import org.chordlog.link.LinkException;
import org.chordlog.station.StationStatus.LinkState;
import org.jspecify.annotations.Nullable;

/**
 * What a station does when its link opens, brings bytes, is silent or is lost. Called by the
 * station's thread alone.
 */
final class LinkEvents implements LinkLoop.Events {
  private final StationParts parts;
  private final ValueEvents values;
  private final Runnable announceState;
  private final FootSwitch footSwitch = new FootSwitch();

  LinkEvents(StationParts parts, ValueEvents values, Runnable announceState) {
    this.parts = parts;
    this.values = values;
    this.announceState = announceState;
  }

  @Override
  public void opened() {
    parts.counters.openings.incrementAndGet();
    values.forget();
    parts.reception.opened(parts.clock.nanos(), parts.clock.micros());
    if (state() != LinkState.SILENT) {
      isOpen();
    }
  }

  /** After a silence that is only when a byte has come. */
  private void isOpen() {
    parts.gaps.end(parts.clock.micros());
    change(LinkState.OPEN, "Open.");
  }

  @Override
  public void bytes(byte[] buffer, int count, long nanos) {
    if (state() == LinkState.SILENT) {
      isOpen();
    }
    parts.reception.came(count);
    values.pipeline().feed(buffer, count, nanos, parts.clock.microsAt(nanos));
    judgeReception(nanos);
  }

  private void judgeReception(long nanos) {
    LinkState before = state();
    if (before != LinkState.SILENT) {
      LinkState now = parts.reception.state(nanos, parts.clock.microsAt(nanos));
      if (now != before) {
        change(now, parts.reception.message());
      }
    }
  }

  @Override
  public void nothing(long nanos) {
    values.pipeline().idle(nanos, parts.clock.microsAt(nanos));
    parts.live.announce(nanos, values.pipeline().phase());
    judgeReception(nanos);
  }

  @Override
  public void lost(LinkException why, long stoodNanos) {
    values.gap();
    parts.reception.end(parts.clock.micros());
    if (stoodNanos > 0) {
      parts.gaps.lost(why, parts.clock.micros());
    }
    change(LinkWatch.after(why, stoodNanos > 0), String.valueOf(why.getMessage()));
  }

  @Override
  public void stopped() {
    values.gap();
    parts.reception.end(parts.clock.micros());
    parts.gaps.end(parts.clock.micros());
    change(LinkState.STOPPED, "Stopped.");
  }

  @Override
  public byte @Nullable [] request(long nanos) {
    return values.pipeline().request(nanos);
  }

  @Override
  public void footSwitch(boolean closed, long nanos) {
    if (footSwitch.pressed(closed, nanos)) {
      values.pipeline().trigger(nanos, parts.clock.microsAt(nanos), values::captured);
    }
  }

  private LinkState state() {
    return parts.link.now().state();
  }

  private void change(LinkState state, String message) {
    if (parts.link.change(state, message, parts.clock.micros())) {
      announceState.run();
    }
  }
}
