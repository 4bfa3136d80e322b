package org.chordlog.harness;

import com.fasterxml.jackson.databind.DeserializationConfig;
import com.fasterxml.jackson.databind.JavaType;
import com.fasterxml.jackson.databind.introspect.BeanPropertyDefinition;
import java.util.Arrays;
import java.util.Locale;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.chordlog.yaml.FieldBinder;

/**
 * The keys that a file of settings may have, each with the words it allows, as the mapper that
 * reads such files sees their records.
 */
public final class FileKeys {
  private static final DeserializationConfig READING =
      FieldBinder.yaml().build().getDeserializationConfig();

  private final SortedSet<String> rows = new TreeSet<>();

  /** Adds a key whose value may be anything. */
  public void key(String path) {
    rows.add(path);
  }

  /** Adds a key whose value is of that type. */
  public void key(String path, Class<?> type) {
    key(path, READING.constructType(type));
  }

  /** A line a key, in order. */
  public String text() {
    return String.join("\n", rows);
  }

  /** Adds the keys of that part of a file, and of the parts within it. */
  public void keys(String path, Class<?> type) {
    JavaType read = READING.constructType(type);
    for (BeanPropertyDefinition each : READING.introspect(read).findProperties()) {
      if (each.couldDeserialize()) {
        key(path + "." + each.getName(), each.getPrimaryType());
      }
    }
  }

  private void key(String path, JavaType type) {
    JavaType of = type.isContainerType() ? type.getContentType() : type;
    rows.add(path + (of.isEnumType() ? words(of.getRawClass()) : ""));
    if (of.getRawClass().isRecord()) {
      keys(path, of.getRawClass());
    }
  }

  private static String words(Class<?> type) {
    return Arrays.stream(type.getEnumConstants())
        .map(each -> each.toString().toLowerCase(Locale.ROOT))
        .collect(Collectors.joining(", ", ": ", ""));
  }
}
