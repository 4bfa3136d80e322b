package org.chordlog.yaml;

import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonParser;
import java.io.IOException;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Fault;
import org.chordlog.measure.Sentence;
import org.jspecify.annotations.Nullable;

/** Line and column of each key of a YAML text, by the path of its field. */
public final class YamlPlaces {
  private final Map<String, JsonLocation> places = new HashMap<>();
  private final String file;

  private YamlPlaces(String yaml, String file) throws IOException {
    this.file = file;
    try (JsonParser parser = FieldBinder.MAPPER.createParser(yaml)) {
      while (parser.nextToken() != null) {
        places.putIfAbsent(FaultGatherer.path(parser), parser.currentTokenLocation());
      }
    }
  }

  /** The same faults, each with its place in that text. */
  public static BadInput placed(BadInput refused, String yaml) {
    return placed(refused, yaml, "");
  }

  /** And with the name of the file, where a service reads several. */
  public static BadInput placed(BadInput refused, String yaml, Path file) {
    return placed(refused, yaml, String.valueOf(file.getFileName()));
  }

  private static BadInput placed(BadInput refused, String yaml, String file) {
    try {
      YamlPlaces places = new YamlPlaces(yaml, file);
      return new BadInput(refused.faults().stream().map(places::placed).toList());
    } catch (IOException e) {
      return refused; // not YAML: its fault has the place already
    }
  }

  private Fault placed(Fault fault) {
    String at = words(place("." + fault.field()));
    return at.isEmpty()
        ? fault
        : new Fault(
            fault.field(),
            fault.value(),
            Sentence.of("%s (%s)", fault.problem(), at),
            fault.allowed());
  }

  private String words(@Nullable JsonLocation at) {
    String line = at == null ? "" : "line " + at.getLineNr() + " column " + at.getColumnNr();
    if (file.isEmpty()) {
      return line;
    }
    return line.isEmpty() ? "in " + file : line + " of " + file;
  }

  /** Of what is missing, the place of the part that should have it. */
  private @Nullable JsonLocation place(String path) {
    @Nullable JsonLocation at = places.get(path);
    int end = Math.max(path.lastIndexOf('.'), path.lastIndexOf('['));
    return at != null || end <= 0 ? at : place(path.substring(0, end));
  }
}
