package org.chordlog.station;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import java.util.Locale;
import java.util.stream.Collectors;
import org.chordlog.capture.Direction;
import org.chordlog.measure.Bridge;
import org.jspecify.annotations.Nullable;

/** A station as the station file has it; {@link StationFields} reads it. */
final class StationNode {
  private static final YAMLMapper YAML = SettingNodes.YAML;

  private StationNode() {}

  /** The lines of its item in the list of stations. */
  static String item(StationSettings station, String indent) {
    String lines = text(YAML.createArrayNode().add(of(station)));
    return lines.lines().map(line -> indent + line + "\n").collect(Collectors.joining());
  }

  private static String text(ArrayNode list) {
    try {
      return YAML.writeValueAsString(list);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException(e);
    }
  }

  static ObjectNode of(StationSettings station) {
    ObjectNode node = YAML.createObjectNode();
    node.put("name", station.name()).put("machine", station.machine());
    node.set("link", SettingNodes.of(station.link()));
    node.set("profile", SettingNodes.of(station.profile()));
    channel(node, station);
    @Nullable Direction direction = station.direction();
    node.put("direction", direction == null ? null : direction.name().toLowerCase(Locale.ROOT));
    node.set("indicator", YAML.valueToTree(station.indicator()));
    @Nullable Bridge bridge = station.bridge();
    if (bridge != null) {
      node.set("bridge", YAML.valueToTree(StationFields.BridgeFields.of(bridge)));
    }
    node.set("capture", YAML.valueToTree(station.capture()));
    node.set("zero", YAML.valueToTree(station.zero()));
    node.put("silenceSeconds", station.silenceSeconds());
    @Nullable FeedSettings feed = station.feed();
    if (feed != null) {
      node.set("feed", YAML.valueToTree(FeedFields.of(feed)));
    }
    return node;
  }

  /** What tells values that are read in one way from those read in another. */
  static String readAs(StationSettings station) {
    ObjectNode read = of(station).retain("profile", "channel", "combine", "direction");
    return Integer.toHexString(read.toString().hashCode());
  }

  private static void channel(ObjectNode node, StationSettings station) {
    if (station.combine() == null) {
      node.put("channel", station.channel());
    } else {
      node.set("combine", YAML.valueToTree(station.combine()));
    }
  }
}
