package org.chordlog.web;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.StreamSupport;
import org.chordlog.measure.Quantity;
import org.chordlog.measure.Sentence;
import org.chordlog.web.http.Json;

/** What differs between two states of a job in the record of changes; limits have their own. */
final class JobChange {
  private static final Map<String, String> NAMES = names();
  private static final String MM = "Mm";

  /** One thing that was changed. */
  record Part(String what, Sentence from, Sentence to) {}

  private JobChange() {}

  /** {@code from} is empty for a new job. */
  static List<Part> parts(String from, String to) {
    JsonNode now = read(to);
    if (from.isEmpty()) {
      return List.of(
          new Part("Job created", Sentence.EMPTY, Sentence.plain(now.path("name").asText())));
    }
    JsonNode before = read(from);
    List<Part> parts = new ArrayList<>();
    String state = now.path("state").asText();
    if (!state.equals(before.path("state").asText())) {
      String what = state.equals("CLOSED") ? "Job closed" : "Job reopened";
      parts.add(new Part(what, Sentence.EMPTY, Sentence.EMPTY));
    }
    NAMES.forEach((field, name) -> add(parts, name, before.path(field), now.path(field)));
    return parts;
  }

  private static void add(List<Part> parts, String name, JsonNode before, JsonNode now) {
    if (!before.equals(now)) {
      parts.add(new Part(name, words(before), words(now)));
    }
  }

  /** A value as it is; of an object its values by name, of a list its members. */
  private static Sentence words(JsonNode node) {
    if (node.isObject()) {
      return Sentence.joined(", ", node.properties().stream().map(JobChange::named).toList());
    }
    return node.isArray()
        ? Sentence.joined(
            ", ", StreamSupport.stream(node.spliterator(), false).map(JobChange::words).toList())
        : Sentence.plain(node.asText().toLowerCase(Locale.ROOT).replace('_', ' '));
  }

  /** What a field's name says of its unit goes to its value. */
  private static Sentence named(Map.Entry<String, JsonNode> field) {
    String name = field.getKey();
    JsonNode value = field.getValue();
    return name.endsWith(MM) && value.isNumber()
        ? Sentence.of(
            "%s %s",
            spaced(name.substring(0, name.length() - MM.length())),
            Quantity.stated(value.asDouble()))
        : Sentence.of("%s %s", spaced(name), words(value));
  }

  /** The words of a name written in one. */
  private static String spaced(String name) {
    return name.replaceAll("([A-Z])", " $1").toLowerCase(Locale.ROOT);
  }

  private static JsonNode read(String json) {
    try {
      return Json.shared().readTree(json);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("a change in the record can't be read", e);
    }
  }

  private static Map<String, String> names() {
    Map<String, String> names = new LinkedHashMap<>();
    names.put("name", "Order");
    names.put("part", "Part or drawing");
    names.put("materialLot", "Material lot");
    names.put("machine", "Machine");
    names.put("station", "Station");
    names.put("section", "Section");
    names.put("measuredFace", "Face measured");
    names.put("plan", "Positions and grouping");
    names.put("details", "Order details");
    return names;
  }
}
