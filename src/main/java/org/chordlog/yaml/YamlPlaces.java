package org.chordlog.yaml;

import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonParser;
import java.io.IOException;
import java.util.HashMap;
import java.util.Map;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Fault;
import org.chordlog.measure.Sentence;
import org.jspecify.annotations.Nullable;

/** Line and column of each key of a YAML text, by the path of its field. */
public final class YamlPlaces {
  private final Map<String, JsonLocation> places = new HashMap<>();

  private YamlPlaces(String yaml) throws IOException {
    try (JsonParser parser = FieldBinder.MAPPER.createParser(yaml)) {
      while (parser.nextToken() != null) {
        places.putIfAbsent(FaultGatherer.path(parser), parser.currentTokenLocation());
      }
    }
  }

  /** The same faults, each with its place in that text. */
  public static BadInput placed(BadInput refused, String yaml) {
    try {
      YamlPlaces places = new YamlPlaces(yaml);
      return new BadInput(refused.faults().stream().map(places::placed).toList());
    } catch (IOException e) {
      return refused; // not YAML: its fault has the place already
    }
  }

  private Fault placed(Fault fault) {
    @Nullable JsonLocation at = place("." + fault.field());
    return at == null
        ? fault
        : new Fault(
            fault.field(),
            fault.value(),
            Sentence.of(
                "%s (line %d column %d)", fault.problem(), at.getLineNr(), at.getColumnNr()),
            fault.allowed());
  }

  /** Of what is missing, the place of the part that should have it. */
  private @Nullable JsonLocation place(String path) {
    @Nullable JsonLocation at = places.get(path);
    int end = Math.max(path.lastIndexOf('.'), path.lastIndexOf('['));
    return at != null || end <= 0 ? at : place(path.substring(0, end));
  }
}
