package org.chordlog.store.sqlite;

import com.fasterxml.jackson.annotation.JsonSubTypes;
import com.fasterxml.jackson.annotation.JsonTypeInfo;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.json.JsonMapper;
import org.chordlog.measure.Section;

/** Records as JSON columns; doubles come back bit for bit. */
final class Json {
  @JsonTypeInfo(use = JsonTypeInfo.Id.NAME, property = "kind")
  @JsonSubTypes({
    @JsonSubTypes.Type(value = Section.RoundTube.class, name = "ROUND_TUBE"),
    @JsonSubTypes.Type(value = Section.SolidRound.class, name = "SOLID_ROUND"),
    @JsonSubTypes.Type(value = Section.Flat.class, name = "FLAT"),
    @JsonSubTypes.Type(value = Section.Box.class, name = "BOX"),
    @JsonSubTypes.Type(value = Section.Profile.class, name = "PROFILE")
  })
  private interface SectionKinds {}

  private static final ObjectMapper MAPPER =
      JsonMapper.builder().addMixIn(Section.class, SectionKinds.class).build();

  private Json() {}

  static String write(Object value) {
    try {
      return MAPPER.writeValueAsString(value);
    } catch (JsonProcessingException e) {
      throw new IllegalArgumentException("can't be written as JSON: " + value, e);
    }
  }

  static <T> T read(String json, Class<T> type) {
    try {
      return MAPPER.readValue(json, type);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("stored " + type.getSimpleName() + " is not readable", e);
    }
  }
}
