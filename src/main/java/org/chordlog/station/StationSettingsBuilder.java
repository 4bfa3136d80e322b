package org.chordlog.station;

import org.chordlog.capture.CaptureOptions;
import org.chordlog.capture.Direction;
import org.chordlog.decode.Combination;
import org.chordlog.decode.FrameProfile;
import org.chordlog.link.LinkSettings;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Bridge;
import org.chordlog.measure.CaptureMode;
import org.chordlog.measure.Indicator;
import org.jspecify.annotations.Nullable;

/** Builds {@link StationSettings}; what is not set takes its default. */
public final class StationSettingsBuilder {
  private final String name;
  private final LinkSettings link;
  private final FrameProfile profile;
  private final Indicator indicator;
  private String machine;
  private @Nullable Integer channel;
  private @Nullable Combination combine;
  private @Nullable Direction direction;
  private @Nullable Bridge bridge;
  private CaptureOptions capture = CaptureOptions.of(CaptureMode.SETTLED);
  private ZeroRule zero = ZeroRule.DEFAULT;
  private double silenceSeconds = StationSettings.SILENCE_SECONDS;
  private @Nullable FeedSettings feed;

  StationSettingsBuilder(
      String name, LinkSettings link, FrameProfile profile, Indicator indicator) {
    this.name = name;
    this.machine = name;
    this.link = link;
    this.profile = profile;
    this.indicator = indicator;
  }

  /** Null: the station's name. */
  public StationSettingsBuilder machine(@Nullable String value) {
    machine = value == null ? name : value;
    return this;
  }

  /** Null: the only one that the profile gives. */
  public StationSettingsBuilder channel(@Nullable Integer value) {
    channel = value;
    return this;
  }

  public StationSettingsBuilder combine(@Nullable Combination value) {
    combine = value;
    return this;
  }

  /** Null: nobody has said it. */
  public StationSettingsBuilder direction(@Nullable Direction value) {
    direction = value;
    return this;
  }

  public StationSettingsBuilder bridge(@Nullable Bridge value) {
    bridge = value;
    return this;
  }

  public StationSettingsBuilder capture(@Nullable CaptureOptions value) {
    capture = value == null ? CaptureOptions.of(CaptureMode.SETTLED) : value;
    return this;
  }

  public StationSettingsBuilder zero(ZeroRule value) {
    zero = value;
    return this;
  }

  public StationSettingsBuilder silenceSeconds(@Nullable Double value) {
    silenceSeconds = value == null ? StationSettings.SILENCE_SECONDS : value;
    return this;
  }

  /** Null: nothing runs through. */
  public StationSettingsBuilder feed(@Nullable FeedSettings value) {
    feed = value;
    return this;
  }

  private int channelOrOnly() {
    @Nullable Integer chosen = channel == null ? profile.onlyChannel() : channel;
    if (chosen == null && combine == null) {
      throw new BadInput(
          "channel", "none", "is missing: the profile gives several", profile.channelsInWords());
    }
    return chosen == null ? 0 : chosen;
  }

  /** The settings; {@link org.chordlog.measure.BadInput} names what is wrong. */
  public StationSettings build() {
    return new StationSettings(
        name,
        machine,
        link,
        profile,
        channelOrOnly(),
        combine,
        direction,
        indicator,
        bridge,
        capture,
        zero,
        silenceSeconds,
        feed);
  }
}
