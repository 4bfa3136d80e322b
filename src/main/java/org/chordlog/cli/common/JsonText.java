package org.chordlog.cli.common;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectWriter;
import com.fasterxml.jackson.databind.json.JsonMapper;

/** What a command prints with {@code --json}: records with units in their names. */
public final class JsonText {
  private static final ObjectWriter WRITER =
      JsonMapper.builder().build().writerWithDefaultPrettyPrinter();

  private JsonText() {}

  public static String of(Object value) {
    try {
      return WRITER.writeValueAsString(value);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException(e);
    }
  }
}
