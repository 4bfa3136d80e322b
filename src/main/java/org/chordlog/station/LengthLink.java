package org.chordlog.station;

import java.util.Objects;
import java.util.function.Consumer;
import org.chordlog.decode.Decoded;
import org.chordlog.decode.Decoder;
import org.chordlog.decode.Decoders;
import org.chordlog.link.LinkException;
import org.chordlog.station.StationStatus.LengthNow;
import org.chordlog.station.StationStatus.LinkState;
import org.jspecify.annotations.Nullable;

/**
 * The link on which the counts of a length come: reads them and hands them on. Belongs to a thread
 * of its own, but for {@link #now()}.
 */
final class LengthLink implements LinkLoop.Events {
  private static final String WHAT = "the encoder";

  private final FeedSettings.CountLink settings;
  private final int channel;
  private final CountsInbox inbox;
  private final StationContext around;
  private final Runnable announceState;
  private final Decoder decoder;
  private final LinkWatch watch;
  private final Gaps gaps;
  private final Reception reception;
  private final Consumer<Decoded> onDecoded = this::decoded;
  private Decoded.@Nullable Value newest;

  LengthLink(
      String station,
      FeedSettings feed,
      CountsInbox inbox,
      StationContext around,
      Runnable announceState) {
    settings = Objects.requireNonNull(feed.link());
    channel = Objects.requireNonNull(feed.wheel()).channel();
    this.inbox = inbox;
    this.around = around;
    this.announceState = announceState;
    decoder = Decoders.of(settings.profile());
    watch = new LinkWatch(station, micros());
    gaps = new Gaps(station, around.incidents(), "Length: ", settings.silenceSeconds());
    reception =
        new Reception(station, new Reception.Of(WHAT, channel, "feed.channel"), around.incidents());
  }

  FeedSettings.CountLink settings() {
    return settings;
  }

  private long micros() {
    return around.clock().wallMicros();
  }

  /** Its state now. Any thread. */
  LengthNow now() {
    LinkWatch.Now link = watch.now();
    return new LengthNow(
        link.state(),
        link.message(),
        settings.link().target(),
        link.sinceMicros(),
        inbox.known(),
        inbox.delay().now());
  }

  @Override
  public void opened() {
    decoder.reset();
    reception.opened(around.clock().monotonicNanos(), micros());
    if (watch.now().state() != LinkState.SILENT) {
      isOpen();
    }
  }

  /** After a silence that is only when a byte has come. */
  private void isOpen() {
    gaps.end(micros());
    change(LinkState.OPEN, "Open.");
  }

  @Override
  public void bytes(byte[] buffer, int count, long nanos) {
    if (watch.now().state() == LinkState.SILENT) {
      isOpen();
    }
    reception.came(count);
    decoder.feed(buffer, 0, count, nanos, onDecoded);
    handOn();
    judge(nanos);
  }

  private void decoded(Decoded decoded) {
    if (decoded instanceof Decoded.Value value) {
      counted(value);
    } else if (decoded instanceof Decoded.Damaged damaged) {
      reception.refused(damaged);
    }
  }

  private void counted(Decoded.Value value) {
    if (value.channel() == channel) {
      reception.read(value.monotonicNanos());
      newest = value;
    } else {
      reception.otherChannel(value.channel());
    }
  }

  /** Of counts that were read at once the last one belongs to that time. */
  private void handOn() {
    Decoded.Value value = newest;
    newest = null;
    if (value != null) {
      inbox.counted(value.monotonicNanos(), value.valueNm());
    }
  }

  private void judge(long nanos) {
    LinkState before = watch.now().state();
    if (before != LinkState.SILENT) {
      LinkState now = reception.state(nanos, micros());
      if (now != before) {
        change(now, reception.message());
      }
    }
  }

  @Override
  public void nothing(long nanos) {
    decoder.idle(nanos, onDecoded);
    handOn();
    judge(nanos);
  }

  @Override
  public void lost(LinkException why, long stoodNanos) {
    inbox.brokeOff(around.clock().monotonicNanos());
    reception.end(micros());
    if (stoodNanos > 0) {
      gaps.lost(why, micros());
    }
    change(LinkWatch.after(why, stoodNanos > 0), String.valueOf(why.getMessage()));
  }

  @Override
  public void stopped() {
    reception.end(micros());
    gaps.end(micros());
    change(LinkState.STOPPED, "Stopped.");
  }

  @Override
  public byte @Nullable [] request(long nanos) {
    return decoder.request(nanos);
  }

  @Override
  public void footSwitch(boolean closed, long nanos) {}

  private void change(LinkState state, String message) {
    if (watch.change(state, message, micros())) {
      announceState.run();
    }
  }
}
