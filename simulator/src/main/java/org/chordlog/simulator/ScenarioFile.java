package org.chordlog.simulator;

import com.fasterxml.jackson.core.JacksonException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonMappingException;
import com.fasterxml.jackson.databind.exc.InvalidFormatException;
import com.fasterxml.jackson.databind.exc.UnrecognizedPropertyException;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Collectors;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Fault;

/** Reads scenarios, and refuses what it does not know. */
public final class ScenarioFile {
  /** The scenario of the demo, in {@code demo-data}. */
  public static final String DEMO = "canopy-hoops";

  /** A line, in {@code demo-data}. */
  public static final String LINE = "canopy-line";

  private static final YAMLMapper YAML =
      YAMLMapper.builder()
          .enable(DeserializationFeature.FAIL_ON_MISSING_CREATOR_PROPERTIES)
          .enable(DeserializationFeature.FAIL_ON_NULL_FOR_PRIMITIVES)
          .enable(DeserializationFeature.FAIL_ON_NULL_CREATOR_PROPERTIES)
          .build();

  private ScenarioFile() {}

  /** A file, or the plain name of a scenario that came with the program. */
  public static Scenario read(String nameOrPath) throws IOException {
    return parse(text(nameOrPath));
  }

  /** The same of a line. */
  public static LineScenario readLine(String nameOrPath) throws IOException {
    return parseLine(text(nameOrPath));
  }

  /** Whether it is a line's, which has a key {@code line}. */
  public static boolean isLine(String nameOrPath) throws IOException {
    return text(nameOrPath).lines().anyMatch(row -> row.startsWith("line:"));
  }

  private static String text(String nameOrPath) throws IOException {
    Path path = Path.of(nameOrPath);
    if (Files.isRegularFile(path)) {
      return Files.readString(path);
    }
    String resource = "/demo-data/" + nameOrPath + ".yaml";
    try (InputStream in = ScenarioFile.class.getResourceAsStream(resource)) {
      if (in == null) {
        throw new BadInput(
            "scenario", nameOrPath, "does not exist", "a file, or " + DEMO + ", or " + LINE);
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    }
  }

  static Scenario parse(String yaml) {
    return parse(yaml, Scenario.class, DEMO);
  }

  static LineScenario parseLine(String yaml) {
    return parse(yaml, LineScenario.class, LINE);
  }

  private static <T> T parse(String yaml, Class<T> kind, String example) {
    try {
      return YAML.readValue(yaml, kind);
    } catch (JsonMappingException e) {
      throw refusal(e, example);
    } catch (JacksonException e) {
      throw new BadInput("scenario", "the file", "is not YAML: " + e.getOriginalMessage(), "YAML");
    }
  }

  private static BadInput refusal(JsonMappingException e, String example) {
    String path =
        e.getPath().stream()
            .map(step -> step.getFieldName() == null ? "" + step.getIndex() : step.getFieldName())
            .collect(Collectors.joining("."));
    if (e.getCause() instanceof BadInput cause) {
      return new BadInput(cause.faults().stream().map(fault -> within(path, fault)).toList());
    }
    String allowed = "a value, as in " + example;
    if (e instanceof InvalidFormatException wrong) {
      return new BadInput(path, wrong.getValue(), "is not understood here", allowed);
    }
    if (e instanceof UnrecognizedPropertyException) {
      return new BadInput(path, "", "is no key of a scenario", "keys, as in " + example);
    }
    return e.getOriginalMessage().startsWith("Missing creator property")
        ? new BadInput(path, "", "is missing", allowed)
        : new BadInput(path, "given", "is refused: " + e.getOriginalMessage(), allowed);
  }

  private static Fault within(String path, Fault fault) {
    String field = path.isEmpty() ? fault.field() : path + "." + fault.field();
    return new Fault(field, fault.value(), fault.problem(), fault.allowed());
  }
}
