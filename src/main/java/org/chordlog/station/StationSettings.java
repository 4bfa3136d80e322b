package org.chordlog.station;

import java.util.ArrayList;
import java.util.List;
import org.chordlog.capture.Capture;
import org.chordlog.capture.CaptureOptions;
import org.chordlog.capture.CaptureSettings;
import org.chordlog.capture.Captures;
import org.chordlog.capture.Direction;
import org.chordlog.decode.Combination;
import org.chordlog.decode.FrameProfile;
import org.chordlog.link.LinkSettings;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Bridge;
import org.chordlog.measure.CaptureMode;
import org.chordlog.measure.Check;
import org.chordlog.measure.Indicator;
import org.jspecify.annotations.Nullable;

/**
 * A station as the station file has it.
 *
 * @param channel the indicator's channel that measures the depth, where no two are combined
 * @param combine two channels that together give the depth; null: one channel gives it
 * @param direction what the indicator shows while its plunger is pushed in; null while nobody has
 *     said it: values are taken as counting up, and no first zero is taken
 * @param bridge the one to mount while none was ever mounted
 * @param silenceSeconds a link on which nothing came for so long is reopened; 0: never
 * @param feed how a section that runs through is followed; with capture PASSING, else null
 */
public record StationSettings(
    String name,
    String machine,
    LinkSettings link,
    FrameProfile profile,
    int channel,
    @Nullable Combination combine,
    @Nullable Direction direction,
    Indicator indicator,
    @Nullable Bridge bridge,
    CaptureOptions capture,
    ZeroRule zero,
    double silenceSeconds,
    @Nullable FeedSettings feed) {
  static final double SILENCE_SECONDS = 10;
  private static final String NAME = "[A-Za-z0-9][A-Za-z0-9_.-]{0,39}";

  public StationSettings {
    if (!Check.text("name", name).matches(NAME)) {
      throw new BadInput("name", name, "can't be used", "1 to 40 letters, digits, '-', '_' or '.'");
    }
    Check.name("machine", machine);
    checkChannel("channel", profile, channel, combine == null);
    if (combine != null) {
      checkChannel("combine.first", profile, combine.first(), true);
      checkChannel("combine.second", profile, combine.second(), true);
    }
    Check.within("silenceSeconds", silenceSeconds, 0, 86_400);
    checkFeed(feed, capture.settings(indicator, orUp(direction)).mode() == CaptureMode.PASSING);
    if (feed != null) {
      checkWheel(feed, profile, channel);
      checkOwnLink(feed.link(), link);
    }
  }

  private static void checkWheel(FeedSettings feed, FrameProfile profile, int depthChannel) {
    FeedSettings.Wheel wheel = feed.wheel();
    FeedSettings.CountLink link = feed.link();
    if (wheel == null) {
      return;
    }
    checkChannel("feed.channel", link == null ? profile : link.profile(), wheel.channel(), true);
    if (link == null && wheel.channel() == depthChannel) {
      throw new BadInput(
          "feed.channel", depthChannel, "measures the depth already", "another channel");
    }
  }

  private static void checkOwnLink(FeedSettings.@Nullable CountLink counts, LinkSettings depths) {
    if (counts != null && !depths.shareable() && counts.link().target().equals(depths.target())) {
      throw new BadInput(
          "feed.link",
          depths.target(),
          "is the port of the indicator",
          "a port of its own, or length channel where one frame has both");
    }
  }

  private static void checkFeed(@Nullable FeedSettings feed, boolean passing) {
    if (passing && feed == null) {
      throw new BadInput(
          "feed", "nothing", "is missing where capture is passing", "where the length comes from");
    }
    if (!passing && feed != null) {
      throw new BadInput(
          "feed", feed.length(), "belongs to capture passing alone", "nothing, or mode passing");
    }
  }

  private static void checkChannel(String key, FrameProfile profile, int channel, boolean used) {
    if (used && !profile.mayGive(channel)) {
      throw new BadInput(
          key, channel, "is a channel that the profile never gives", profile.channelsInWords());
    }
  }

  /** Settled capture, no bridge yet, and everything else as it usually is. */
  public static StationSettingsBuilder of(
      String name, LinkSettings link, FrameProfile profile, Indicator indicator) {
    return new StationSettingsBuilder(name, link, profile, indicator);
  }

  /** The channel number of the values that give the depth. */
  int depthChannel() {
    return combine == null ? channel : Combination.CHANNEL;
  }

  CaptureSettings captureSettings() {
    return capture.settings(indicator, counts());
  }

  /** Which way values are taken to count: up, while nobody has said it. */
  Direction counts() {
    return orUp(direction);
  }

  /**
   * {@link BadInput} for a first zero while nobody has said which way the indicator counts: a flat
   * and free air then look alike.
   */
  void refuseZeroWithoutDirection(boolean zeroedBefore) {
    if (direction == null && !zeroedBefore) {
      throw new BadInput(
          "direction",
          "",
          "is not said in the settings of station "
              + name
              + ", and without it a flat can't be told from free air",
          "counts_up where the shown value grows as the plunger is pushed in, counts_down where it"
              + " falls; say it at the page of the station's settings, then set zero");
    }
  }

  private static Direction orUp(@Nullable Direction direction) {
    return direction == null ? Direction.COUNTS_UP : direction;
  }

  /** How long the plunger must stand still for a zero: 1 s with the usual rest of 0.4 s. */
  long stillNanos() {
    return captureSettings().restNanos() * 5 / 2;
  }

  Capture newCapture() {
    return Captures.of(captureSettings());
  }

  /** A port that a station reads, and the key that names it. */
  record PortUse(String key, String target) {}

  /** A port that both would read, by this one's key; null if none. Recordings may be read twice. */
  @Nullable PortUse portSharedWith(StationSettings other) {
    List<String> targets = other.ports().stream().map(PortUse::target).toList();
    return ports().stream()
        .filter(each -> targets.contains(each.target()))
        .findFirst()
        .orElse(null);
  }

  private List<PortUse> ports() {
    List<PortUse> ports = new ArrayList<>();
    add(ports, "link", link);
    FeedSettings.CountLink counts = feed == null ? null : feed.link();
    if (counts != null) {
      add(ports, "feed.link", counts.link());
    }
    return ports;
  }

  private static void add(List<PortUse> ports, String key, LinkSettings of) {
    if (!of.shareable()) {
      ports.add(new PortUse(key, of.target()));
    }
  }

  /** Whether values come by themselves, so that free air can be watched. */
  boolean sendsAlways() {
    return !profile.buttonOnly() && !captureSettings().everyFrame();
  }

  /** Whether the link is read every few milliseconds, to send requests in time. */
  boolean polled() {
    return profile.sendsWhenAsked();
  }
}
