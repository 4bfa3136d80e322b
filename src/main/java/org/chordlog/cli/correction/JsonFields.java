package org.chordlog.cli.correction;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.List;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Check;
import org.chordlog.measure.Length;
import org.jspecify.annotations.Nullable;

/** The fields of one object; unknown ones are refused. */
final class JsonFields {
  private final String owner;
  private final JsonNode node;

  JsonFields(String owner, JsonNode node, String... known) {
    this.owner = owner;
    this.node = node;
    if (!node.isObject()) {
      throw new BadInput(owner, node, "is not an object", "{…}");
    }
    node.fieldNames()
        .forEachRemaining(
            name -> {
              if (!List.of(known).contains(name)) {
                throw new BadInput(owner, name, "is not known", String.join(", ", known));
              }
            });
  }

  private String path(String name) {
    return owner + "." + name;
  }

  /** Null where it is missing or null. */
  @Nullable Double number(String name) {
    JsonNode value = node.path(name);
    if (value.isMissingNode() || value.isNull()) {
      return null;
    }
    if (!value.isNumber()) {
      throw new BadInput(path(name), value, "is not a number", "a finite number");
    }
    double number = Check.finite(path(name), value.asDouble());
    return name.endsWith("Mm") ? Length.possible(path(name), number, number) : number;
  }

  /** It may be null, but has to be there. */
  @Nullable Double numberOrNull(String name) {
    if (!node.has(name)) {
      throw new BadInput(path(name), "none", "is missing", "a number above 0, null for a flat");
    }
    return number(name);
  }

  double needed(String name) {
    Double value = number(name);
    if (value == null) {
      throw new BadInput(path(name), "none", "is missing", "a number");
    }
    return value;
  }

  int whole(String name, int absent) {
    JsonNode value = node.path(name);
    if (value.isMissingNode() || value.isNull()) {
      return absent;
    }
    if (!value.canConvertToExactIntegral() || !value.canConvertToInt()) {
      throw new BadInput(path(name), value, "is not a whole number", "a whole number");
    }
    return value.asInt();
  }

  String text(String name, String absent) {
    JsonNode value = node.path(name);
    if (value.isMissingNode() || value.isNull()) {
      return absent;
    }
    if (!value.isTextual()) {
      throw new BadInput(path(name), value, "is not text", "a text in quotes");
    }
    return value.asText();
  }

  @Override
  public String toString() {
    return node.toString();
  }
}
