package org.chordlog.station;

import org.chordlog.measure.Sample;
import org.chordlog.profile.CountScale;
import org.chordlog.profile.LengthJoin;
import org.jspecify.annotations.Nullable;

/**
 * Lengths from counts that come on a link of their own. Depths that no count reaches in time have
 * no length until counts come again; nothing is carried on across that gap.
 */
final class LinkLengths implements FeedStream {
  private final CountScale scale;
  private final CountsInbox inbox;
  private final Sink sink;
  private final LengthJoin.Sink<Sample> joined = new Joined();
  private CountedLength counts;
  private @Nullable LengthJoin<Sample> join;
  private double delayMs;

  LinkLengths(CountScale scale, CountsInbox inbox, Sink sink) {
    this.scale = scale;
    this.inbox = inbox;
    this.sink = sink;
    counts = new CountedLength(scale);
    join = newJoin();
  }

  private LengthJoin<Sample> newJoin() {
    delayMs = inbox.delay().ms();
    return new LengthJoin<>(delayMs, joined);
  }

  private final class Joined implements LengthJoin.Sink<Sample> {
    @Override
    public void placed(Sample depth, long lengthNm) {
      sink.runsThrough(depth, lengthNm);
    }

    @Override
    public void lost(Sample depth) {
      lengthLost();
      byTime(depth);
    }
  }

  @Override
  public boolean isLength(int channel) {
    return false;
  }

  @Override
  public void length(Sample sample) {
    throw new IllegalStateException("no channel of the indicator is a length");
  }

  @Override
  public void depth(Sample sample) {
    LengthJoin<Sample> now = join;
    if (now == null) {
      byTime(sample);
    } else {
      now.depth(sample, sample.monotonicNanos());
    }
  }

  private void byTime(Sample depth) {
    sink.runsThrough(depth, FeedStream.byTime(depth, UNKNOWN_MM_PER_SECOND));
  }

  @Override
  public void catchUp() {
    if (join != null && delayMs != inbox.delay().ms()) {
      join = newJoin();
    }
    for (CountsInbox.Arrived next = inbox.poll(); next != null; next = inbox.poll()) {
      Long valueNm = next.valueNm();
      if (valueNm == null) {
        brokeOff();
      } else {
        counted(next.nanos(), valueNm);
      }
    }
  }

  private void counted(long nanos, long valueNm) {
    LengthJoin<Sample> now = join;
    if (now == null) {
      counts = new CountedLength(scale);
      now = newJoin();
      join = now;
      known(true);
    }
    now.length(nanos, counts.nm(valueNm));
  }

  private void brokeOff() {
    LengthJoin<Sample> now = join;
    if (now != null) {
      lengthLost();
      now.loseAll();
    }
  }

  private void lengthLost() {
    if (join != null) {
      join = null;
      known(false);
    }
  }

  private void known(boolean now) {
    inbox.known(now);
    sink.lengthKnown(now);
  }

  @Override
  public void forget() {
    inbox.clear();
    if (join != null) {
      counts = new CountedLength(scale);
      join = newJoin();
    }
  }
}
