package org.chordlog.station;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.type.TypeReference;
import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.chordlog.decode.BuiltInProfile;
import org.chordlog.decode.FrameProfile;
import org.chordlog.file.FileTrouble;
import org.chordlog.measure.BadInput;
import org.chordlog.yaml.FieldBinder;
import org.chordlog.yaml.YamlFaults;
import org.chordlog.yaml.YamlPlaces;
import org.jspecify.annotations.Nullable;

/** The station file (YAML): what belongs to the machines. */
public final class StationFile {
  private static final String STATIONS = "stations";

  private static final int MOST_BYTES = 1 << 20;

  /** Keys of former releases, and what to write now. */
  private static final Map<String, String> REPLACED =
      Map.of(
          "reversed", "direction: counts_down (or counts_up)",
          "freeAirEnd", "direction: counts_down (or counts_up)");

  private StationFile() {}

  /**
   * All stations of a file; {@link BadInput} with every fault, the path of its field and its place.
   */
  public static List<StationSettings> read(Path file) {
    if (file.toFile().length() > MOST_BYTES) {
      throw new BadInput("config", file, "is too large", "at most " + MOST_BYTES + " bytes");
    }
    return parseFile(text(file), file);
  }

  /** As {@link #read}, of the file's text. */
  static List<StationSettings> parseFile(String yaml, Path file) {
    try {
      return parse(yaml, file.toString());
    } catch (BadInput e) {
      throw YamlPlaces.placed(e, yaml);
    }
  }

  private static String text(Path file) {
    try {
      return Files.readString(file);
    } catch (IOException e) {
      throw new BadInput("config", file, FileTrouble.reading(file, e), "a station file");
    }
  }

  /** As {@link #read}, without places; {@code name} is shown where a message names no field. */
  public static List<StationSettings> parse(String yaml, String name) {
    FieldBinder binder = new FieldBinder(REPLACED);
    List<StationSettings> stations = stations(binder, tree(yaml, name), name);
    binder.throwIfAny();
    return stations;
  }

  /** The keys and values of a station, as a station file has them. */
  public static Map<String, Object> fields(StationSettings station) {
    return SettingNodes.YAML.convertValue(StationNode.of(station), new TypeReference<>() {});
  }

  /** The frame profile that a station file would have there: a built-in one's name, or fields. */
  public static FrameProfile profile(String yaml) {
    FieldBinder binder = new FieldBinder(REPLACED);
    JsonNode node = tree(yaml, "profile");
    @Nullable FrameProfile profile =
        node.isTextual()
            ? BuiltInProfile.named(node.asText()).profile()
            : binder.bind("profile", node, FrameProfile.class);
    binder.throwIfAny();
    return Objects.requireNonNull(profile);
  }

  private static JsonNode tree(String yaml, String name) {
    try {
      return FieldBinder.tree(yaml);
    } catch (JsonProcessingException e) {
      throw YamlFaults.of(e, "config", name, "a station file");
    }
  }

  private static List<StationSettings> stations(FieldBinder binder, JsonNode root, String name) {
    @Nullable JsonNode list = root.get(STATIONS);
    if (list == null || !list.isArray()) {
      throw new BadInput(STATIONS, name, "has no list of stations", "up to " + Stations.MOST);
    }
    root.fieldNames()
        .forEachRemaining(
            key -> {
              if (!key.equals(STATIONS)) {
                binder.add(key, root.get(key), "has no such key", STATIONS);
              }
            });
    if (list.size() > Stations.MOST) {
      binder.add(STATIONS, list.size(), "are too many", "1 to " + Stations.MOST);
    }
    return each(binder, list);
  }

  /** A port sends to one station only. */
  private static void samePort(
      FieldBinder binder, String path, StationSettings station, List<StationSettings> others) {
    for (StationSettings other : others) {
      StationSettings.PortUse shared = station.portSharedWith(other);
      if (shared != null) {
        binder.add(
            path + "." + shared.key(),
            shared.target(),
            "is the port of station " + other.name() + " too",
            "a port of its own");
        return;
      }
    }
  }

  private static List<StationSettings> each(FieldBinder binder, JsonNode list) {
    List<StationSettings> stations = new ArrayList<>();
    Set<String> names = new HashSet<>();
    for (int i = 0; i < list.size(); i++) {
      String path = STATIONS + "[" + i + "]";
      @Nullable StationSettings station = new StationFields(binder, path, list.get(i)).read();
      if (station != null && !names.add(station.name())) {
        binder.add(path + ".name", station.name(), "is taken", "a name of its own");
      }
      if (station != null) {
        samePort(binder, path, station, stations);
        stations.add(station);
      }
    }
    return stations;
  }
}
