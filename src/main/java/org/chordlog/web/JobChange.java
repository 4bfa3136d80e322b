package org.chordlog.web;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.StreamSupport;
import org.chordlog.web.http.Json;

/** What differs between two states of a job in the record of changes; limits have their own. */
final class JobChange {
  private static final Map<String, String> NAMES = names();

  /** One thing that was changed. */
  record Part(String what, String from, String to) {}

  private JobChange() {}

  /** {@code from} is empty for a new job. */
  static List<Part> parts(String from, String to) {
    JsonNode now = read(to);
    if (from.isEmpty()) {
      return List.of(new Part("Job created", "", now.path("name").asText()));
    }
    JsonNode before = read(from);
    List<Part> parts = new ArrayList<>();
    String state = now.path("state").asText();
    if (!state.equals(before.path("state").asText())) {
      parts.add(new Part(state.equals("CLOSED") ? "Job closed" : "Job reopened", "", ""));
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
  private static String words(JsonNode node) {
    if (node.isObject()) {
      return node.properties().stream()
          .map(each -> named(each.getKey(), words(each.getValue())))
          .collect(Collectors.joining(", "));
    }
    return node.isArray()
        ? StreamSupport.stream(node.spliterator(), false)
            .map(JobChange::words)
            .collect(Collectors.joining(", "))
        : node.asText().toLowerCase(java.util.Locale.ROOT).replace('_', ' ');
  }

  /** The unit at the end of a field's name goes to its value. */
  private static String named(String field, String value) {
    boolean length = field.endsWith("Mm");
    String name = length ? field.substring(0, field.length() - 2) : field;
    String spaced = name.replaceAll("([A-Z])", " $1").toLowerCase(java.util.Locale.ROOT);
    return spaced + " " + value + (length ? " mm" : "");
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
