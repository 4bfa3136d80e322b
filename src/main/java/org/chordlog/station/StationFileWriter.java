package org.chordlog.station;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.node.TextNode;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.chordlog.capture.Direction;
import org.chordlog.decode.BuiltInProfile;
import org.chordlog.decode.FrameProfile;
import org.chordlog.link.LinkSettings;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Bridge;
import org.chordlog.yaml.FieldBinder;
import org.jspecify.annotations.Nullable;

/**
 * Adds a station to a station file. The new one is put behind the others and the text before it is
 * left as it is, comments too; the file is replaced in one step, and only when it reads back as
 * meant.
 */
public final class StationFileWriter {
  private static final YAMLMapper YAML = FieldBinder.yaml().build();

  private StationFileWriter() {}

  /** Appends the station; makes the file when there is none. */
  public static void append(Path file, StationSettings station) {
    StationFileChange.of(file, before -> appended(before, file, station));
  }

  private static String appended(String before, Path file, StationSettings station) {
    List<StationSettings> meant =
        new ArrayList<>(before.isBlank() ? List.of() : StationFile.parseFile(before, file));
    refuseSamePort(station, meant);
    meant.add(station);
    String head = before.isBlank() ? "stations:\n" : ended(withoutEmptyList(before));
    String after = head + item(station, indentOf(before));
    if (!readsAs(after, meant)) {
      throw new BadInput(
          "config",
          file,
          "is laid out in a way that can't be added to",
          "a list 'stations:' at the end of the file, one item '- name: …' a station");
    }
    return after;
  }

  static void refuseSamePort(StationSettings station, List<StationSettings> others) {
    for (StationSettings other : others) {
      StationSettings.PortUse shared = station.portSharedWith(other);
      if (shared != null) {
        throw new BadInput(
            shared.key(),
            shared.target(),
            "is the port of station " + other.name() + " too",
            "a port of its own");
      }
    }
  }

  static String read(Path file) {
    try {
      return Files.readString(file);
    } catch (IOException e) {
      throw new BadInput("config", file, "can't be read", "a file that this user may read");
    }
  }

  /** A list without stations, as in "stations: []", becomes one that can be added to. */
  private static String withoutEmptyList(String text) {
    return text.replaceFirst("(?m)^(\\s*stations:)[ \\t]*\\[\\s*\\]", "$1");
  }

  private static String ended(String text) {
    return text.endsWith("\n") ? text : text + "\n";
  }

  static boolean readsAs(String yaml, List<StationSettings> meant) {
    try {
      return StationFile.parse(yaml, "new").equals(meant);
    } catch (BadInput e) {
      return false;
    }
  }

  /** As deep as the items that are there. */
  static String indentOf(String yaml) {
    return yaml.lines()
        .filter(line -> line.stripLeading().startsWith("- "))
        .findFirst()
        .map(line -> line.substring(0, line.indexOf('-')))
        .orElse("  ");
  }

  static String item(StationSettings station, String indent) {
    String lines = text(YAML.createArrayNode().add(node(station)));
    return lines.lines().map(line -> indent + line + "\n").collect(Collectors.joining());
  }

  private static String text(ArrayNode list) {
    try {
      return YAML.writeValueAsString(list);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException(e);
    }
  }

  static ObjectNode node(StationSettings station) {
    ObjectNode node = YAML.createObjectNode();
    node.put("name", station.name()).put("machine", station.machine());
    node.set("link", linkNode(station.link()));
    node.set("profile", profileNode(station.profile()));
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

  private static void channel(ObjectNode node, StationSettings station) {
    if (station.combine() == null) {
      node.put("channel", station.channel());
    } else {
      node.set("combine", YAML.valueToTree(station.combine()));
    }
  }

  static JsonNode linkNode(LinkSettings link) {
    return link.match(new LinkNode(YAML));
  }

  /** A built-in profile's name, or the fields of one's own. */
  static JsonNode profileNode(FrameProfile profile) {
    return Arrays.stream(BuiltInProfile.values())
        .filter(known -> known.profile().equals(profile))
        .findFirst()
        .<JsonNode>map(known -> TextNode.valueOf(known.plainName()))
        .orElseGet(() -> YAML.valueToTree(profile));
  }
}
