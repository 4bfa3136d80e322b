package org.chordlog.station;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.Arrays;
import java.util.List;
import org.chordlog.capture.CaptureOptions;
import org.chordlog.capture.Direction;
import org.chordlog.decode.BuiltInProfile;
import org.chordlog.decode.Combination;
import org.chordlog.decode.FrameProfile;
import org.chordlog.link.LinkSettings;
import org.chordlog.measure.Bridge;
import org.chordlog.measure.FootKind;
import org.chordlog.measure.Indicator;
import org.chordlog.yaml.FieldBinder;
import org.jspecify.annotations.Nullable;

/** One station of the station file. */
final class StationFields {
  static final List<String> KEYS =
      List.of(
          "name",
          "machine",
          "link",
          "profile",
          "channel",
          "combine",
          "direction",
          "indicator",
          "bridge",
          "capture",
          "zero",
          "silenceSeconds",
          "feed");

  private final FieldBinder binder;
  private final String path;
  private final JsonNode node;

  StationFields(FieldBinder binder, String path, JsonNode node) {
    this.binder = binder;
    this.path = path;
    this.node = node;
  }

  @Nullable StationSettings read() {
    unknownKeys();
    @Nullable String name = required("name", String.class);
    @Nullable String machine = part("machine", String.class);
    @Nullable LinkSettings link = LinkFields.read(binder, path + ".link", node.get("link"));
    @Nullable FrameProfile profile = profile(path, node);
    @Nullable Indicator indicator =
        complete("indicator", Indicator.class, "resolutionMm", "permissibleErrorMm", "travelMm")
            ? required("indicator", Indicator.class)
            : null;
    @Nullable BridgeFields bridgeFields =
        complete("bridge", BridgeFields.class, "name", "spanMm")
            ? part("bridge", BridgeFields.class)
            : null;
    @Nullable Bridge bridge =
        bridgeFields == null ? null : binder.under(path + ".bridge", bridgeFields::bridge);
    @Nullable CaptureOptions capture = part("capture", CaptureOptions.class);
    @Nullable ZeroFields zero = part("zero", ZeroFields.class);
    @Nullable ZeroRule rule =
        zero == null ? ZeroRule.DEFAULT : binder.under(path + ".zero", zero::rule);
    @Nullable Integer channel = part("channel", Integer.class);
    @Nullable Double silence = part("silenceSeconds", Double.class);
    @Nullable Combination combine = part("combine", Combination.class);
    @Nullable Direction direction = part("direction", Direction.class);
    @Nullable FeedSettings feed = feed();
    boolean feedFaulty = node.hasNonNull("feed") && feed == null;
    if (name == null || link == null || profile == null || indicator == null || rule == null) {
      return null;
    }
    if (feedFaulty) {
      return null;
    }
    return binder.under(
        path,
        () ->
            StationSettings.of(name, link, profile, indicator)
                .machine(machine)
                .channel(channel)
                .combine(combine)
                .direction(direction)
                .bridge(bridge)
                .capture(capture)
                .zero(rule)
                .silenceSeconds(silence)
                .feed(feed)
                .build());
  }

  private void unknownKeys() {
    node.fieldNames()
        .forEachRemaining(
            key -> {
              if (!KEYS.contains(key)) {
                binder.add(path + "." + key, node.get(key), "has no such key", keys());
              }
            });
  }

  private static String keys() {
    return String.join(", ", KEYS);
  }

  private <T> @Nullable T part(String key, Class<T> type) {
    return binder.bind(path + "." + key, node.get(key), type);
  }

  private <T> @Nullable T required(String key, Class<T> type) {
    if (!node.hasNonNull(key)) {
      binder.add(path + "." + key, "", "is missing", "see src/docs/stations.md");
    }
    return part(key, type);
  }

  /** Whether the part, if it is there, has all that it must have; what it has not is told. */
  private boolean complete(String key, Class<?> type, String... needed) {
    @Nullable JsonNode part = node.get(key);
    if (part == null || !part.isObject()) {
      return true;
    }
    List<String> missing = Arrays.stream(needed).filter(each -> !part.hasNonNull(each)).toList();
    missing.forEach(each -> binder.add(path + "." + key + "." + each, "", "is missing", "a value"));
    if (!missing.isEmpty()) {
      JsonNode unused = binder.withoutUnknownKeys(path + "." + key, part, type);
    }
    return missing.isEmpty();
  }

  /** A built-in profile's name, or a profile of its own. */
  private @Nullable FrameProfile profile(String within, JsonNode part) {
    @Nullable JsonNode given = part.get("profile");
    if (given == null || given.isNull()) {
      binder.add(within + ".profile", "", "is missing", "see src/docs/stations.md");
      return null;
    }
    return given.isTextual()
        ? binder.under(within, () -> BuiltInProfile.named(given.asText()).profile())
        : binder.bind(within + ".profile", given, FrameProfile.class);
  }

  private @Nullable FeedSettings feed() {
    @Nullable FeedFields fields = part("feed", FeedFields.class);
    @Nullable JsonNode given = node.get("feed");
    if (fields == null || given == null) {
      return null;
    }
    if (!given.hasNonNull("link")) {
      return binder.under(path, fields::settings);
    }
    String within = path + ".feed";
    @Nullable LinkSettings link = LinkFields.read(binder, within + ".link", given.get("link"));
    @Nullable FrameProfile profile = profile(within, given);
    return link == null || profile == null
        ? null
        : binder.under(path, () -> fields.settings(link, profile));
  }

  /** The part {@code bridge}: as the record of a bridge, without its id. */
  record BridgeFields(
      @Nullable String name,
      @Nullable Double spanMm,
      double spanUncertaintyMm,
      double footRadiusMm,
      double footRadiusUncertaintyMm,
      double skewLimitDegrees,
      @Nullable FootKind footKind) {
    static BridgeFields of(Bridge bridge) {
      return new BridgeFields(
          bridge.name(),
          bridge.spanMm(),
          bridge.spanUncertaintyMm(),
          bridge.footRadiusMm(),
          bridge.footRadiusUncertaintyMm(),
          bridge.skewLimitDegrees(),
          bridge.feet().kind());
    }

    Bridge bridge() {
      return new Bridge(
              0,
              name == null ? "" : name,
              new Bridge.Span(spanMm == null ? 0 : spanMm, spanUncertaintyMm),
              new Bridge.Feet(footRadiusMm, footRadiusUncertaintyMm, footKind),
              skewLimitDegrees)
          .possible();
    }
  }

  /** The part {@code zero}. */
  record ZeroFields(
      @Nullable Double maximumAgeHours,
      ZeroRule.@Nullable Policy whenStale,
      ZeroRule.@Nullable Policy whenMissing) {
    ZeroRule rule() {
      ZeroRule usual = ZeroRule.DEFAULT;
      return new ZeroRule(
          maximumAgeHours == null ? usual.maximumAgeHours() : maximumAgeHours,
          whenStale == null ? usual.whenStale() : whenStale,
          whenMissing == null ? usual.whenMissing() : whenMissing);
    }
  }
}
