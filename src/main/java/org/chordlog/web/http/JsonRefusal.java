package org.chordlog.web.http;

import com.fasterxml.jackson.databind.JsonMappingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.exc.InvalidFormatException;
import com.fasterxml.jackson.databind.exc.MismatchedInputException;
import com.fasterxml.jackson.databind.exc.UnrecognizedPropertyException;
import com.fasterxml.jackson.databind.exc.ValueInstantiationException;
import java.io.IOException;
import java.util.Arrays;
import java.util.stream.Collectors;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.NumberText;

/** Why JSON that came in can't be taken: the field, what was sent there, and what is allowed. */
final class JsonRefusal {
  private static final String NUMBER = "a number";

  private JsonRefusal() {}

  static BadInput of(IOException e, byte[] json) {
    if (e instanceof ValueInstantiationException made && made.getCause() instanceof BadInput bad) {
      return within(path(made), bad);
    }
    if (e instanceof JsonMappingException mapping && mapping.getCause() instanceof BadInput bad) {
      return within(path(mapping), bad);
    }
    if (e instanceof UnrecognizedPropertyException unknown) {
      String known =
          unknown.getKnownPropertyIds() == null
              ? "none"
              : unknown.getKnownPropertyIds().stream()
                  .map(String::valueOf)
                  .sorted()
                  .collect(Collectors.joining(", "));
      return new BadInput(path(unknown), "", "is not known", known);
    }
    if (e instanceof InvalidFormatException format) {
      return new BadInput(
          path(format), format.getValue(), "can't be read", allowed(format.getTargetType()));
    }
    if (e instanceof MismatchedInputException mismatch) {
      return mismatched(mismatch, json);
    }
    return noJson();
  }

  private static BadInput noJson() {
    return new BadInput("body", "", "is not JSON", "a JSON object");
  }

  private static BadInput mismatched(MismatchedInputException e, byte[] json) {
    String kind = kind(e);
    JsonNode sent = sent(e, json);
    if (kind.equals(NUMBER) && sent.isTextual()) {
      NumberText.refuseThousands(path(e), sent.textValue());
      return new BadInput(path(e), sent.textValue(), "is not a number", NUMBER);
    }
    boolean missing = sent.isMissingNode() || sent.isNull();
    return new BadInput(path(e), "", missing ? "is missing" : "is of the wrong kind", kind);
  }

  /** What stands where the fault is. */
  private static JsonNode sent(JsonMappingException e, byte[] json) {
    try {
      JsonNode at = Json.shared().readTree(json);
      for (JsonMappingException.Reference step : e.getPath()) {
        at = step.getFieldName() == null ? at.path(step.getIndex()) : at.path(step.getFieldName());
      }
      return at;
    } catch (IOException rest) {
      throw noJson();
    }
  }

  private static BadInput within(String path, BadInput inner) {
    return new BadInput(
        inner.faults().stream().map(fault -> fault.at(join(path, fault.field()))).toList());
  }

  private static String join(String path, String field) {
    return path.equals("body") || path.equals(field) || path.endsWith("." + field)
        ? (path.equals("body") ? field : path)
        : path + "." + field;
  }

  private static String path(JsonMappingException e) {
    StringBuilder path = new StringBuilder();
    for (JsonMappingException.Reference step : e.getPath()) {
      if (step.getFieldName() == null) {
        path.append('[').append(step.getIndex()).append(']');
      } else {
        path.append(path.isEmpty() ? "" : ".").append(step.getFieldName());
      }
    }
    return path.isEmpty() ? "body" : path.toString();
  }

  private static String kind(MismatchedInputException e) {
    return e.getTargetType() == null ? "see the API document" : allowed(e.getTargetType());
  }

  private static String allowed(Class<?> type) {
    if (type.isEnum()) {
      return Arrays.stream(type.getEnumConstants())
          .map(String::valueOf)
          .collect(Collectors.joining(", "));
    }
    if (Number.class.isAssignableFrom(type) || type.isPrimitive()) {
      return type == boolean.class ? "true, false" : NUMBER;
    }
    return type == String.class ? "a text" : "a JSON " + type.getSimpleName();
  }
}
