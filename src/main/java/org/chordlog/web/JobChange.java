package org.chordlog.web;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Stream;
import java.util.stream.StreamSupport;
import org.chordlog.measure.Face;
import org.chordlog.measure.Plan;
import org.chordlog.measure.Quantity;
import org.chordlog.measure.Section;
import org.chordlog.measure.Sentence;
import org.chordlog.measure.SubgroupRule;
import org.chordlog.verdict.SectionWords;
import org.chordlog.verdict.Words;
import org.chordlog.web.http.Json;

/** What differs between two states of a job in the record of changes; limits have their own. */
final class JobChange {
  private static final List<Field> FIELDS =
      List.of(
          new Field("name", "Order", JobChange::text),
          new Field("part", "Part or drawing", JobChange::text),
          new Field("materialLot", "Material lot", JobChange::text),
          new Field("machine", "Machine", JobChange::text),
          new Field("station", "Station", JobChange::text),
          new Field("section", "Section", JobChange::section),
          new Field("measuredFace", "Face measured", JobChange::face),
          new Field("plan", "Positions and grouping", JobChange::plan),
          new Field("customer", "Customer", JobChange::text),
          new Field("drawingRevision", "Drawing revision", JobChange::text),
          new Field("developedLengthMm", "Developed length", JobChange::length),
          new Field("developedAngleDegrees", "Developed angle", JobChange::angle));

  private static final List<Size> SIZES =
      List.of(
          new Size("outsideDiameterMm", "outside diameter"),
          new Size("diameterMm", "diameter"),
          new Size("heightMm", "height"),
          new Size("widthMm", "width"),
          new Size("wallMm", "wall"),
          new Size("centroidFromOuterMm", "centroid from the outer face"));

  /** One thing that was changed. */
  record Part(String what, Sentence from, Sentence to) {}

  /** A field of a job as it is recorded, what it is called, and how its values are said. */
  private record Field(String name, String title, Function<JsonNode, Sentence> said) {
    private Stream<Part> changed(JsonNode before, JsonNode now) {
      return before.path(name).equals(now.path(name))
          ? Stream.of()
          : Stream.of(new Part(title, said(before.path(name)), said(now.path(name))));
    }

    private Sentence said(JsonNode value) {
      return value.isMissingNode() || value.isNull() ? Sentence.EMPTY : said.apply(value);
    }
  }

  /** A length of a section. */
  private record Size(String name, String title) {
    private Sentence of(JsonNode section) {
      JsonNode value = section.path(name);
      return value.isNumber() ? Sentence.of("%s %s", title, length(value)) : Sentence.EMPTY;
    }
  }

  private JobChange() {}

  /** {@code from} is empty for a new job. */
  static List<Part> parts(String from, String to) {
    JsonNode now = read(to);
    if (from.isEmpty()) {
      return List.of(new Part("Job created", Sentence.EMPTY, text(now.path("name"))));
    }
    JsonNode before = read(from);
    List<Part> parts = new ArrayList<>();
    String state = now.path("state").asText();
    if (!state.equals(before.path("state").asText())) {
      String what = state.equals("CLOSED") ? "Job closed" : "Job reopened";
      parts.add(new Part(what, Sentence.EMPTY, Sentence.EMPTY));
    }
    FIELDS.forEach(field -> field.changed(before, now).forEach(parts::add));
    return parts;
  }

  private static Sentence text(JsonNode value) {
    return Sentence.plain(value.asText());
  }

  private static Sentence length(JsonNode value) {
    return Sentence.of("%s", Quantity.stated(value.asDouble()));
  }

  private static Sentence angle(JsonNode value) {
    return Sentence.plain(value.asText() + "°");
  }

  private static Sentence face(JsonNode value) {
    return Sentence.plain(Face.valueOf(value.asText()).words());
  }

  private static Sentence section(JsonNode value) {
    String kind = SectionWords.of(Section.Kind.valueOf(value.path("kind").asText()));
    Stream<Sentence> sizes = SIZES.stream().map(each -> each.of(value));
    return Sentence.joined(", ", Stream.concat(Stream.of(Sentence.plain(kind)), sizes).toList());
  }

  private static Sentence plan(JsonNode value) {
    List<String> positions =
        StreamSupport.stream(value.path("positions").spliterator(), false)
            .map(JsonNode::asText)
            .toList();
    JsonNode rule = value.path("subgroups");
    SubgroupRule.Kind kind = SubgroupRule.Kind.valueOf(rule.path("kind").asText());
    SubgroupRule subgroups = new SubgroupRule(kind, rule.path("size").asInt());
    return Sentence.plain(Words.of(new Plan(positions, subgroups)));
  }

  private static JsonNode read(String json) {
    try {
      return Json.shared().readTree(json);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("a change in the record can't be read", e);
    }
  }
}
