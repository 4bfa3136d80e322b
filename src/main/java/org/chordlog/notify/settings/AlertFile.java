package org.chordlog.notify.settings;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
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

/** The file of alerts (YAML): people, groups, shifts, mail server, webhooks. */
public final class AlertFile {
  /** Its name beside the station file. */
  public static final String NAME = "alerts.yaml";

  private static final String SETTING = "alerts";
  private static final String KIND = "a file of alerts; see the help on alerts";
  private static final int MOST_BYTES = 1 << 20;

  private AlertFile() {}

  /**
   * Its settings; {@link BadInput} with every fault, the path of its field and its place. Files
   * that it names are beside it, unless their path is absolute; they are read once.
   */
  public static AlertSettings read(Path file) {
    return parse(text(file), file.toAbsolutePath());
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

  private static AlertSettings parse(String yaml, Path file) {
    JsonNode root = tree(yaml, file);
    if (!root.isObject()) {
      throw bad(file, "holds no keys");
    }
    try {
      FieldBinder binder = new FieldBinder();
      Path folder = Objects.requireNonNull(file.getParent());
      @Nullable AlertSettings settings = new AlertFields(binder, root, folder).settings();
      binder.throwIfAny();
      return Objects.requireNonNull(settings);
    } catch (BadInput e) {
      throw YamlPlaces.placed(e, yaml);
    }
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
