package org.chordlog.web.http;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonSetter;
import com.fasterxml.jackson.annotation.Nulls;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializerProvider;
import com.fasterxml.jackson.databind.cfg.CoercionAction;
import com.fasterxml.jackson.databind.cfg.CoercionInputShape;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.module.SimpleModule;
import com.fasterxml.jackson.databind.ser.std.StdSerializer;
import com.fasterxml.jackson.databind.type.LogicalType;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Lengths;
import org.chordlog.measure.Sentence;

/** JSON in and out; whatever is wrong with what comes in becomes a {@link BadInput}. */
public final class Json {
  private static final ObjectMapper MAPPER = mapper();

  /** For what others send: texts within their bounds, and no nulls within lists. */
  private static final ObjectMapper REQUESTS = requests();

  private Json() {}

  private static ObjectMapper requests() {
    ObjectMapper mapper = MAPPER.copy();
    mapper.configOverride(List.class).setSetterInfo(JsonSetter.Value.forContentNulls(Nulls.FAIL));
    return mapper.registerModule(
        new SimpleModule("texts").addDeserializer(String.class, new Texts.Reader()));
  }

  private static ObjectMapper mapper() {
    JsonMapper mapper =
        JsonMapper.builder()
            .enable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
            .enable(DeserializationFeature.FAIL_ON_NULL_FOR_PRIMITIVES)
            .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
            .addModule(
                new SimpleModule()
                    .addSerializer(Sentence.class, new SentenceJson())
                    .addSerializer(Double.class, new FiniteOrNull())
                    .addSerializer(double.class, new FiniteOrNull()))
            .build();
    mapper
        .getFactory()
        .setStreamReadConstraints(StreamReadConstraints.builder().maxNestingDepth(20).build());
    for (LogicalType type : new LogicalType[] {LogicalType.Float, LogicalType.Integer}) {
      mapper.coercionConfigFor(type).setCoercion(CoercionInputShape.String, CoercionAction.Fail);
    }
    return mapper;
  }

  /** JSON has no infinity and no not-a-number: both are null. */
  private static final class FiniteOrNull extends StdSerializer<Double> {
    private static final long serialVersionUID = 1L;

    FiniteOrNull() {
      super(Double.class);
    }

    @Override
    public void serialize(Double value, JsonGenerator out, SerializerProvider provider)
        throws IOException {
      if (Double.isFinite(value)) {
        out.writeNumber(value);
      } else {
        out.writeNull();
      }
    }
  }

  /** Any thread; must not be configured further. */
  public static ObjectMapper shared() {
    return MAPPER;
  }

  /** Leaves out what is empty or absent, as a station file does. */
  public static JsonMapper withoutEmpty() {
    return JsonMapper.builder()
        .defaultPropertyInclusion(
            JsonInclude.Value.construct(JsonInclude.Include.NON_EMPTY, JsonInclude.Include.ALWAYS))
        .build();
  }

  /** What a text holds that this program wrote. */
  public static JsonNode tree(String text) {
    try {
      return MAPPER.readTree(text);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("stored text that is no JSON", e);
    }
  }

  /** UTF-8, with the lengths of sentences in mm; infinities and NaN become null. */
  public static byte[] bytes(Object value) {
    return bytes(value, Lengths.MM);
  }

  /** Sentences with their lengths in that unit. */
  public static byte[] bytes(Object value, Lengths lengths) {
    try {
      return SentenceJson.in(lengths, MAPPER.writer()).writeValueAsBytes(value);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("can't be written as JSON: " + value.getClass(), e);
    }
  }

  /** As {@link #bytes(Object)}, as a text. */
  public static String text(Object value) {
    return text(value, Lengths.MM);
  }

  public static String text(Object value, Lengths lengths) {
    return new String(bytes(value, lengths), StandardCharsets.UTF_8);
  }

  static <T> T read(byte[] json, Class<T> type) {
    try {
      T value = REQUESTS.readValue(json, type);
      if (value == null) {
        throw new BadInput("body", "null", "is missing", "a JSON object");
      }
      return value;
    } catch (IOException e) {
      throw JsonRefusal.of(e, json);
    }
  }
}
