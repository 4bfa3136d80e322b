package org.chordlog.station;

import org.chordlog.measure.Face;
import org.chordlog.measure.KnownLengths;
import org.chordlog.measure.LengthSource;
import org.chordlog.profile.CountScale;
import org.jspecify.annotations.Nullable;

/** The part {@code feed} of a station in the station file; lengths in mm. */
record FeedFields(
    @Nullable From length,
    @Nullable Integer channel,
    @Nullable Double mmPerCount,
    @Nullable Integer counterBits,
    @Nullable Boolean reversed,
    @Nullable Face wheelFace,
    @Nullable Double mmPerSecond,
    @Nullable Double mostMmPerSecond,
    @Nullable Boolean bothWays,
    @Nullable Double pieceMm,
    @Nullable Double leadInMm,
    @Nullable Double leadOutMm,
    @Nullable Double riseMm,
    @Nullable Double stretchMm) {
  /** Where the length of a section may come from. */
  enum From {
    CHANNEL(LengthSource.CHANNEL),
    SPEED(LengthSource.SPEED),
    NONE(LengthSource.NONE);

    private final LengthSource source;

    From(LengthSource source) {
      this.source = source;
    }
  }

  static FeedFields of(FeedSettings feed) {
    FeedSettings.Wheel wheel = feed.wheel();
    KnownLengths known = feed.known();
    return new FeedFields(
        From.valueOf(feed.length().name()),
        wheel == null ? null : wheel.channel(),
        wheel == null ? null : wheel.scale().mmPerCount(),
        wheel == null ? null : wheel.scale().bits(),
        wheel == null ? null : wheel.scale().reversed(),
        wheel == null ? null : wheel.face(),
        feed.mmPerSecond(),
        feed.mostMmPerSecond(),
        feed.bothWays(),
        known.pieceMm(),
        known.leadInMm(),
        known.leadOutMm(),
        known.riseMm(),
        known.stretchMm());
  }

  FeedSettings settings() {
    return new FeedSettings(
        length == null ? LengthSource.CHANNEL : length.source,
        wheel(),
        mmPerSecond,
        mostMmPerSecond == null ? FeedSettings.MOST_MM_PER_SECOND : mostMmPerSecond,
        bothWays != null && bothWays,
        new KnownLengths(pieceMm, leadInMm, leadOutMm, riseMm, stretchMm));
  }

  private FeedSettings.@Nullable Wheel wheel() {
    if (channel == null) {
      return null;
    }
    CountScale scale =
        new CountScale(
            mmPerCount == null ? 1 : mmPerCount,
            reversed != null && reversed,
            counterBits == null ? 0 : counterBits);
    return new FeedSettings.Wheel(channel, scale, wheelFace);
  }
}
