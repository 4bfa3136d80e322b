package org.chordlog.simulator;

import com.fasterxml.jackson.core.JacksonException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonMappingException;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Collectors;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Fault;

/** Reads scenarios, and refuses what it does not know. */
public final class ScenarioFile {
  /** The scenario of the demo, in {@code demo-data}. */
  public static final String DEMO = "canopy-hoops";

  private static final YAMLMapper YAML =
      YAMLMapper.builder()
          .enable(DeserializationFeature.FAIL_ON_MISSING_CREATOR_PROPERTIES)
          .enable(DeserializationFeature.FAIL_ON_NULL_FOR_PRIMITIVES)
          .enable(DeserializationFeature.FAIL_ON_NULL_CREATOR_PROPERTIES)
          .build();

  private ScenarioFile() {}

  /** A file, or the plain name of a scenario that came with the program. */
  public static Scenario read(String nameOrPath) throws IOException {
    Path path = Path.of(nameOrPath);
    if (Files.isRegularFile(path)) {
      return parse(Files.readString(path));
    }
    String resource = "/demo-data/" + nameOrPath + ".yaml";
    try (InputStream in = ScenarioFile.class.getResourceAsStream(resource)) {
      if (in == null) {
        throw new BadInput("scenario", nameOrPath, "is not there", "a file, or " + DEMO);
      }
      return parse(new String(in.readAllBytes(), java.nio.charset.StandardCharsets.UTF_8));
    }
  }

  static Scenario parse(String yaml) {
    try {
      return YAML.readValue(yaml, Scenario.class);
    } catch (JsonMappingException e) {
      throw refusal(e);
    } catch (JacksonException e) {
      throw new BadInput("scenario", "the file", "is no YAML: " + e.getOriginalMessage(), "YAML");
    }
  }

  private static BadInput refusal(JsonMappingException e) {
    String path =
        e.getPath().stream()
            .map(step -> step.getFieldName() == null ? "" + step.getIndex() : step.getFieldName())
            .collect(Collectors.joining("."));
    if (e.getCause() instanceof BadInput cause) {
      return new BadInput(cause.faults().stream().map(fault -> within(path, fault)).toList());
    }
    return new BadInput(path, "given", "is refused: " + e.getOriginalMessage(), "see " + DEMO);
  }

  private static Fault within(String path, Fault fault) {
    String field = path.isEmpty() ? fault.field() : path + "." + fault.field();
    return new Fault(field, fault.value(), fault.problem(), fault.allowed());
  }
}
