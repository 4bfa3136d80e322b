package org.chordlog.forward;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.charset.MalformedInputException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Objects;
import org.chordlog.measure.BadInput;
import org.chordlog.yaml.FieldBinder;
import org.chordlog.yaml.YamlFaults;
import org.chordlog.yaml.YamlPlaces;
import org.jspecify.annotations.Nullable;

/** The file that names the plant of this workshop computer (YAML). */
public final class PlantFile {
  /** Its name in the data directory. */
  public static final String NAME = "plant.yaml";

  private static final String SETTING = "plant";
  private static final String KIND = "a file of the plant; see the help on the plant";
  private static final int MOST_BYTES = 1 << 16;

  private PlantFile() {}

  /**
   * Its settings; {@link BadInput} with every fault, the path of its field and its place. Files
   * that it names are beside it, unless their path is absolute; they are read once.
   */
  public static PlantSettings read(Path file) {
    String yaml = text(file);
    JsonNode root = tree(yaml, file);
    if (!root.isObject()) {
      throw bad(file, "holds no keys");
    }
    try {
      return settings(root, Objects.requireNonNull(file.toAbsolutePath().getParent()));
    } catch (BadInput e) {
      throw YamlPlaces.placed(e, yaml);
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

  private static String text(Path file) {
    try {
      if (Files.size(file) > MOST_BYTES) {
        throw bad(file, "is too large");
      }
      return Files.readString(file);
    } catch (NoSuchFileException e) {
      throw bad(file, "does not exist");
    } catch (MalformedInputException e) {
      throw bad(file, "is not text in UTF-8");
    } catch (IOException e) {
      throw bad(file, "can't be read by this user");
    }
  }

  private static BadInput bad(Path file, String problem) {
    return new BadInput(SETTING, file, problem, KIND);
  }

  private static JsonNode tree(String yaml, Path file) {
    try {
      return FieldBinder.yaml()
          .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
          .build()
          .readTree(yaml);
    } catch (JsonProcessingException e) {
      throw YamlFaults.of(e, SETTING, file.toString(), KIND);
    }
  }
}
