package org.chordlog.yaml;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.chordlog.file.FileTrouble;
import org.chordlog.measure.BadInput;

/**
 * A file of settings that people write. {@code setting} names it in faults, {@code kind} says what
 * is allowed.
 */
public record YamlFile(String setting, String kind, int mostBytes) {
  /** The text of the file; {@link BadInput} where it can't be read or is too large. */
  public String text(Path file) {
    try {
      if (Files.size(file) > mostBytes) {
        throw bad(file, "is too large");
      }
      return Files.readString(file);
    } catch (IOException e) {
      throw bad(file, FileTrouble.reading(file, e));
    }
  }

  /** Its keys; {@link BadInput} with the place where it is no YAML, or holds no keys. */
  public JsonNode keys(String yaml, Path file) {
    JsonNode root = tree(yaml, file);
    if (!root.isObject()) {
      throw bad(file, "holds no keys");
    }
    return root;
  }

  private JsonNode tree(String yaml, Path file) {
    try {
      return FieldBinder.tree(yaml);
    } catch (JsonProcessingException e) {
      throw YamlFaults.of(e, setting, file.toString(), kind);
    }
  }

  private BadInput bad(Path file, String problem) {
    return new BadInput(setting, file, problem, kind);
  }
}
