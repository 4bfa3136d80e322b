package org.chordlog.yaml;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonMappingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.MapperFeature;
import com.fasterxml.jackson.databind.cfg.CoercionAction;
import com.fasterxml.jackson.databind.cfg.CoercionInputShape;
import com.fasterxml.jackson.databind.node.MissingNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.type.LogicalType;
import com.fasterxml.jackson.dataformat.yaml.YAMLGenerator;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Fault;
import org.jspecify.annotations.Nullable;

/** Binds parts of a YAML tree to records and gathers every fault with the path of its field. */
public final class FieldBinder {
  /** One for all, since it learns each record once. */
  static final YAMLMapper MAPPER = yaml().build();

  private final List<Fault> faults = new ArrayList<>();
  private final Map<String, String> replaced;

  public FieldBinder() {
    this(Map.of());
  }

  /** {@code replaced}: keys of former releases, and what to write now. */
  public FieldBinder(Map<String, String> replaced) {
    this.replaced = Map.copyOf(replaced);
  }

  /** The mapper that reads and writes such files; {@code no} is no text, as YAML has it. */
  public static YAMLMapper.Builder yaml() {
    return YAMLMapper.builder()
        .enable(MapperFeature.ACCEPT_CASE_INSENSITIVE_ENUMS)
        .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
        .enable(YAMLGenerator.Feature.MINIMIZE_QUOTES)
        .disable(YAMLGenerator.Feature.WRITE_DOC_START_MARKER)
        .disable(DeserializationFeature.ACCEPT_FLOAT_AS_INT)
        .withCoercionConfig(
            LogicalType.Textual,
            texts -> texts.setCoercion(CoercionInputShape.Boolean, CoercionAction.Fail))
        .defaultPropertyInclusion(
            JsonInclude.Value.construct(
                JsonInclude.Include.NON_NULL, JsonInclude.Include.NON_NULL));
  }

  /**
   * The tree of a whole text, in which a number knows how it was written ({@link JsonNode#asText});
   * a missing node where the text holds nothing.
   */
  public static JsonNode tree(String yaml) throws JsonProcessingException {
    try (JsonParser parser = MAPPER.createParser(yaml)) {
      @Nullable JsonNode tree =
          MAPPER
              .reader(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
              .with(new WrittenNumbers(parser))
              .readTree(parser);
      return tree == null ? MissingNode.getInstance() : tree;
    } catch (JsonProcessingException e) {
      throw e;
    } catch (IOException e) {
      throw new UncheckedIOException(e); // a text in memory is read without fail
    }
  }

  public void add(Fault fault) {
    faults.add(fault);
  }

  public void add(String path, Object value, String problem, String allowed) {
    faults.add(new Fault(path, String.valueOf(value), problem, allowed));
  }

  /** The part at that path, or null when it is absent or faulty. */
  public <T> @Nullable T bind(String path, @Nullable JsonNode node, Class<T> type) {
    if (node == null || node.isNull()) {
      return null;
    }
    int before = faults.size();
    JsonNode known = withoutUnknownKeys(path, node, type);
    try {
      T bound = read(known, type, new FaultGatherer(path, this, replaced));
      return faults.size() == before ? bound : null;
    } catch (JsonProcessingException e) {
      if (faults.size() == before) {
        addFailure(path, node, e);
      }
      return null;
    }
  }

  private static <T> T read(JsonNode part, Class<T> type, FaultGatherer gatherer)
      throws JsonProcessingException {
    try (JsonParser parser = WrittenNumbers.reader(part, MAPPER)) {
      return MAPPER.readerFor(type).withHandler(gatherer).readValue(parser);
    } catch (JsonProcessingException e) {
      throw e;
    } catch (IOException e) {
      throw new UncheckedIOException(e); // a tree in memory is read without fail
    }
  }

  /** The part without keys that its record does not have, which are told. */
  public JsonNode withoutUnknownKeys(String path, JsonNode node, Class<?> type) {
    if (!(node instanceof ObjectNode given) || !type.isRecord()) {
      return node;
    }
    Set<String> known =
        Arrays.stream(type.getRecordComponents())
            .map(RecordComponent::getName)
            .collect(Collectors.toCollection(TreeSet::new));
    ObjectNode rest = given.deepCopy();
    given
        .fieldNames()
        .forEachRemaining(
            key -> {
              if (!known.contains(key) && !replaced.containsKey(key)) {
                rest.remove(key);
                addUnknown(path + "." + key, key, given.get(key), known);
              }
            });
    return rest;
  }

  /** In {@code spanMm: 200,5} the comma ends the value, and 5 becomes a key. */
  private void addUnknown(String path, String key, JsonNode value, Set<String> known) {
    if (key.matches("[0-9]+") && value.isNull()) {
      add(path, "", "follows a comma, which ends a value", "a point as decimal mark, as in 200.5");
    } else {
      add(path, value, "has no such key", String.join(", ", known));
    }
  }

  /** What that makes, with its faults placed under that path; null when it is faulty. */
  public <T> @Nullable T under(String path, Supplier<T> make) {
    try {
      return make.get();
    } catch (BadInput e) {
      e.faults().forEach(fault -> add(placed(path, fault)));
      return null;
    }
  }

  private static Fault placed(String path, Fault fault) {
    boolean both = !path.isEmpty() && !fault.field().isEmpty();
    return fault.at(path + (both ? "." : "") + fault.field());
  }

  private void addFailure(String path, JsonNode node, JsonProcessingException e) {
    String at =
        e instanceof JsonMappingException mapping ? path + FaultGatherer.path(mapping) : path;
    if (e.getCause() instanceof BadInput refused) {
      refused.faults().forEach(fault -> add(placed(at, fault)));
    } else {
      add(at, node, "can't be understood", e.getOriginalMessage());
    }
  }

  /** Refuses with all faults together. */
  public void throwIfAny() {
    if (!faults.isEmpty()) {
      throw new BadInput(faults);
    }
  }
}
