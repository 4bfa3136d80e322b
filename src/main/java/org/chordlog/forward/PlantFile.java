package org.chordlog.forward;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.util.Objects;
import org.chordlog.measure.BadInput;
import org.chordlog.yaml.FieldBinder;
import org.chordlog.yaml.YamlFile;
import org.chordlog.yaml.YamlPlaces;
import org.jspecify.annotations.Nullable;

/** The file that names the plant of this workshop computer (YAML). */
public final class PlantFile {
  /** Its name in the data directory. */
  public static final String NAME = "plant.yaml";

  private static final YamlFile FILE =
      new YamlFile("plant", "a file of the plant; see the help on the plant", 1 << 16);

  private PlantFile() {}

  /**
   * Its settings; {@link BadInput} with every fault, the path of its field and its place. Files
   * that it names are beside it, unless their path is absolute; they are read once.
   */
  public static PlantSettings read(Path file) {
    String yaml = FILE.text(file);
    JsonNode root = FILE.keys(yaml, file);
    try {
      return settings(root, Objects.requireNonNull(file.toAbsolutePath().getParent()));
    } catch (BadInput e) {
      throw YamlPlaces.placed(e, yaml, file);
    }
  }

  private static PlantSettings settings(JsonNode root, Path folder) {
    FieldBinder binder = new FieldBinder();
    root.fieldNames().forEachRemaining(key -> refuseUnknown(binder, key, root.get(key)));
    JsonNode known = root.deepCopy();
    ((ObjectNode) known).retain(PlantFields.KEYS);
    @Nullable PlantFields fields = binder.bind("", known, PlantFields.class);
    @Nullable PlantSettings settings =
        fields == null ? null : binder.under("", () -> fields.settings(folder));
    binder.throwIfAny();
    return Objects.requireNonNull(settings);
  }

  private static void refuseUnknown(FieldBinder binder, String key, JsonNode value) {
    if (!PlantFields.KEYS.contains(key)) {
      binder.add(key, value, "has no such key", String.join(", ", PlantFields.KEYS));
    }
  }
}
