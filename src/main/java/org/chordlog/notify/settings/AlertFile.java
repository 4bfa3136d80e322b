package org.chordlog.notify.settings;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.util.Objects;
import org.chordlog.measure.BadInput;
import org.chordlog.yaml.FieldBinder;
import org.chordlog.yaml.YamlFile;
import org.chordlog.yaml.YamlPlaces;
import org.jspecify.annotations.Nullable;

/** The file of alerts (YAML): people, groups, shifts, mail server, webhooks. */
public final class AlertFile {
  /** Its name beside the station file. */
  public static final String NAME = "alerts.yaml";

  private static final YamlFile FILE =
      new YamlFile("alerts", "a file of alerts; see the help on alerts", 1 << 20);

  private AlertFile() {}

  /**
   * Its settings; {@link BadInput} with every fault, the path of its field and its place. Files
   * that it names are beside it, unless their path is absolute; they are read once.
   */
  public static AlertSettings read(Path file) {
    return parse(FILE.text(file), file.toAbsolutePath());
  }

  private static AlertSettings parse(String yaml, Path file) {
    JsonNode root = FILE.keys(yaml, file);
    try {
      FieldBinder binder = new FieldBinder();
      Path folder = Objects.requireNonNull(file.getParent());
      @Nullable AlertSettings settings = new AlertFields(binder, root, folder).settings();
      binder.throwIfAny();
      return Objects.requireNonNull(settings);
    } catch (BadInput e) {
      throw YamlPlaces.placed(e, yaml, file);
    }
  }
}
