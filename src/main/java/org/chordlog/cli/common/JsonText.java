package org.chordlog.cli.common;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectWriter;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.module.SimpleModule;
import com.fasterxml.jackson.databind.ser.std.ToStringSerializer;
import org.chordlog.measure.Sentence;

/** What a command prints with {@code --json}: records with units in their names, all in mm. */
public final class JsonText {
  private static final ObjectWriter WRITER =
      JsonMapper.builder()
          .addModule(new SimpleModule().addSerializer(Sentence.class, ToStringSerializer.instance))
          .build()
          .writerWithDefaultPrettyPrinter();

  private JsonText() {}

  public static String of(Object value) {
    try {
      return WRITER.writeValueAsString(value);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException(e);
    }
  }
}
