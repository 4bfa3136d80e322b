package org.chordlog.yaml;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.databind.DeserializationContext;
import com.fasterxml.jackson.databind.JavaType;
import com.fasterxml.jackson.databind.JsonDeserializer;
import com.fasterxml.jackson.databind.JsonMappingException;
import com.fasterxml.jackson.databind.deser.DeserializationProblemHandler;
import java.io.IOException;
import java.util.Arrays;
import java.util.Collection;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** Notes wrong keys and values and lets the binding go on, so that all are told at once. */
final class FaultGatherer extends DeserializationProblemHandler {
  private final String base;
  private final FieldBinder faults;
  private final Map<String, String> replaced;

  FaultGatherer(String base, FieldBinder faults, Map<String, String> replaced) {
    this.base = base;
    this.faults = faults;
    this.replaced = replaced;
  }

  @Override
  public boolean handleUnknownProperty(
      DeserializationContext context,
      JsonParser parser,
      @Nullable JsonDeserializer<?> deserializer,
      Object bean,
      String name)
      throws IOException {
    String owner = path(parser);
    String parent = owner.substring(0, Math.max(0, owner.lastIndexOf('.')));
    @Nullable Collection<Object> known =
        deserializer == null ? null : deserializer.getKnownPropertyNames();
    String allowed = known == null ? "" : String.join(", ", names(known));
    @Nullable String now = replaced.get(name);
    faults.add(
        base + parent + "." + name,
        parser.readValueAsTree(),
        now == null ? "has no such key" : "is replaced by another key",
        now == null ? allowed : now);
    return true;
  }

  private static Set<String> names(Collection<Object> known) {
    return known.stream().map(String::valueOf).collect(Collectors.toCollection(TreeSet::new));
  }

  @Override
  public @Nullable Object handleWeirdStringValue(
      DeserializationContext context, Class<?> type, String value, String problem) {
    note(context.getParser(), value, type);
    return blank(type);
  }

  @Override
  public @Nullable Object handleWeirdNumberValue(
      DeserializationContext context, Class<?> type, Number value, String problem) {
    note(context.getParser(), value, type);
    return blank(type);
  }

  @Override
  public @Nullable Object handleUnexpectedToken(
      DeserializationContext context,
      JavaType type,
      JsonToken token,
      JsonParser parser,
      String problem)
      throws IOException {
    String at = path(parser);
    faults.add(
        base + at, parser.readValueAsTree(), "is not understood here", allowed(type.getRawClass()));
    return blank(type.getRawClass());
  }

  private void note(JsonParser parser, Object value, Class<?> type) {
    faults.add(base + path(parser), "'" + value + "'", "is not understood here", allowed(type));
  }

  private static String allowed(Class<?> type) {
    if (type.isEnum()) {
      return Arrays.stream(type.getEnumConstants())
          .map(each -> String.valueOf(each).toLowerCase(Locale.ROOT))
          .collect(Collectors.joining(", "));
    }
    if (type == boolean.class || type == Boolean.class) {
      return "true, false";
    }
    if (type == int.class || type == Integer.class || type == long.class || type == Long.class) {
      return "a whole number";
    }
    if (type == String.class) {
      return "a text; words such as no, yes or true in quotes";
    }
    return type == double.class || Number.class.isAssignableFrom(type)
        ? "a number"
        : "see the description of this file";
  }

  private static @Nullable Object blank(Class<?> type) {
    if (type == boolean.class) {
      return false;
    }
    if (type == int.class) {
      return 0;
    }
    if (type == long.class) {
      return 0L;
    }
    return type == double.class ? 0.0 : null;
  }

  /** Where the parser is, as {@code .framing.kind} or {@code .list[2]}. */
  static String path(JsonParser parser) {
    String pointer = parser.getParsingContext().pathAsPointer().toString();
    return pointer.replaceAll("/(\\d+)(?=/|$)", "[$1]").replace('/', '.');
  }

  static String path(JsonMappingException e) {
    return e.getPath().stream()
        .map(
            step ->
                step.getFieldName() == null
                    ? "[" + step.getIndex() + "]"
                    : "." + step.getFieldName())
        .collect(Collectors.joining());
  }
}
