package org.chordlog.station;

import com.fasterxml.jackson.databind.JsonNode;
import org.chordlog.decode.FrameProfile;
import org.chordlog.link.LinkSettings;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Face;
import org.chordlog.measure.KnownLengths;
import org.chordlog.measure.LengthSource;
import org.chordlog.profile.CountScale;
import org.jspecify.annotations.Nullable;

/** The part {@code feed} of a station in the station file; lengths in mm. */
record FeedFields(
    @Nullable From length,
    @Nullable JsonNode link,
    @Nullable JsonNode profile,
    @Nullable Double delayMs,
    @Nullable Double silenceSeconds,
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
    LINK(LengthSource.LINK),
    SPEED(LengthSource.SPEED),
    NONE(LengthSource.NONE);

    private final LengthSource source;

    From(LengthSource source) {
      this.source = source;
    }
  }

  static FeedFields of(FeedSettings feed) {
    FeedSettings.Wheel wheel = feed.wheel();
    FeedSettings.CountLink link = feed.link();
    KnownLengths known = feed.known();
    return new FeedFields(
        From.valueOf(feed.length().name()),
        link == null ? null : SettingNodes.of(link.link()),
        link == null ? null : SettingNodes.of(link.profile()),
        link == null ? null : link.delayMs(),
        link == null ? null : link.silenceSeconds(),
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

  /** The settings without a link of the length's own. */
  FeedSettings settings() {
    if (link == null) {
      refuse("profile", profile, source() != LengthSource.LINK);
      refuse("delayMs", delayMs, true);
      refuse("silenceSeconds", silenceSeconds, true);
    }
    return settings(channel, null);
  }

  /** The settings with that link, which is read by that profile. */
  FeedSettings settings(LinkSettings on, FrameProfile by) {
    double silence = silenceSeconds == null ? StationSettings.SILENCE_SECONDS : silenceSeconds;
    return settings(
        channel == null ? by.onlyChannel() : channel,
        new FeedSettings.CountLink(on, by, delayMs, silence));
  }

  private FeedSettings settings(@Nullable Integer of, FeedSettings.@Nullable CountLink on) {
    return new FeedSettings(
        source(),
        wheel(of),
        on,
        mmPerSecond,
        mostMmPerSecond == null ? FeedSettings.MOST_MM_PER_SECOND : mostMmPerSecond,
        bothWays != null && bothWays,
        new KnownLengths(pieceMm, leadInMm, leadOutMm, riseMm, stretchMm));
  }

  private LengthSource source() {
    return length == null ? LengthSource.CHANNEL : length.source;
  }

  private void refuse(String key, @Nullable Object value, boolean refused) {
    if (value != null && refused) {
      throw new BadInput(
          "feed." + key, value, "does not belong to length " + source(), "length link");
    }
  }

  private FeedSettings.@Nullable Wheel wheel(@Nullable Integer of) {
    if (of == null) {
      boolean scaled =
          mmPerCount != null || counterBits != null || reversed != null || wheelFace != null;
      if (scaled) {
        throw new BadInput(
            "feed.channel", "", "is missing: what counts the length", "a channel that counts");
      }
      return null;
    }
    CountScale scale =
        new CountScale(
            mmPerCount == null ? 1 : mmPerCount,
            reversed != null && reversed,
            counterBits == null ? 0 : counterBits);
    return new FeedSettings.Wheel(of, scale, wheelFace);
  }
}
