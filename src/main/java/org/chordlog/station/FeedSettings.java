package org.chordlog.station;

import org.chordlog.decode.FrameProfile;
import org.chordlog.link.LinkSettings;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Check;
import org.chordlog.measure.Face;
import org.chordlog.measure.KnownLengths;
import org.chordlog.measure.LengthSource;
import org.chordlog.profile.CountScale;
import org.chordlog.profile.LengthJoin;
import org.chordlog.profile.TrackSettings;
import org.jspecify.annotations.Nullable;

/**
 * How a section that runs through is followed.
 *
 * @param length where the length along the feed comes from: CHANNEL, LINK, SPEED or NONE
 * @param wheel what measures the length; for CHANNEL and LINK
 * @param link where its counts come in; for LINK alone
 * @param mmPerSecond the stated constant feed; for SPEED alone
 * @param mostMmPerSecond the greatest feed there is; a length that goes faster has jumped
 * @param bothWays whether pieces may come from either end
 * @param known what is known of the pieces' lengths
 */
public record FeedSettings(
    LengthSource length,
    @Nullable Wheel wheel,
    @Nullable CountLink link,
    @Nullable Double mmPerSecond,
    double mostMmPerSecond,
    boolean bothWays,
    KnownLengths known) {
  /**
   * A measuring wheel or another encoder: the channel of the frame that carries its counts, and the
   * face of the section that it runs on; null: the measured one.
   */
  public record Wheel(int channel, CountScale scale, @Nullable Face face) {}

  /**
   * A link of its own that brings the counts, how its frames are read, how much later depths come
   * than the counts that belong to them (null: to be found), and after what silence the link is
   * opened anew (0: never).
   */
  public record CountLink(
      LinkSettings link, FrameProfile profile, @Nullable Double delayMs, double silenceSeconds) {
    public CountLink {
      if (delayMs != null) {
        double unused = LengthJoin.checkedDelayMs("feed.delayMs", delayMs);
      }
      Check.within("feed.silenceSeconds", silenceSeconds, 0, 86_400);
    }

    /** Whether the link is read every few milliseconds, to send requests in time. */
    boolean polled() {
      return profile.sendsWhenAsked();
    }
  }

  public FeedSettings {
    Check.within("feed.mostMmPerSecond", mostMmPerSecond, 1, 10_000);
    if (length == LengthSource.PULSE) {
      throw new BadInput("feed.length", length, "is not supported", "channel, link, speed, none");
    }
    need("link", length == LengthSource.LINK, link);
    need("channel", length == LengthSource.CHANNEL || length == LengthSource.LINK, wheel);
    need("mmPerSecond", length == LengthSource.SPEED, mmPerSecond);
    if (mmPerSecond != null) {
      Check.within("feed.mmPerSecond", mmPerSecond, 0.1, mostMmPerSecond);
    }
    if (length == LengthSource.SPEED && known.pieceMm() == null && known.stretchMm() == null) {
      throw new BadInput(
          "feed.pieceMm",
          "nothing",
          "is missing: with a stated feed only the length of a piece tells a stop",
          "mm");
    }
  }

  private static void need(String key, boolean needed, @Nullable Object value) {
    if (needed && value == null) {
      throw new BadInput("feed." + key, "nothing", "is missing", "see src/docs/stations.md");
    }
    if (!needed && value != null) {
      throw new BadInput("feed." + key, "a value", "does not belong to this length", "nothing");
    }
  }

  /** The greatest feed where none is stated. */
  static final double MOST_MM_PER_SECOND = TrackSettings.MOST_MM_PER_SECOND;

  /** The face along which lengths are measured, where that face is measured by the bridge. */
  Face lengthFace(Face measured) {
    Face face = wheel == null ? null : wheel.face();
    return face == null ? measured : face;
  }
}
