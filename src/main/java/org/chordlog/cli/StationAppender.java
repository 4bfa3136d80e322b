package org.chordlog.cli;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.dataformat.yaml.YAMLGenerator;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.chordlog.link.LinkSettings;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Indicator;
import org.chordlog.station.StationFile;

/** Adds a station at the end of a station file; what stands there, comments too, stays. */
final class StationAppender {
  private static final YAMLMapper YAML =
      YAMLMapper.builder()
          .disable(YAMLGenerator.Feature.WRITE_DOC_START_MARKER)
          .defaultPropertyInclusion(
              JsonInclude.Value.construct(
                  JsonInclude.Include.NON_EMPTY, JsonInclude.Include.ALWAYS))
          .build();

  private static final Pattern ITEM = Pattern.compile("(?m)^( *)- ");
  private final Path file;

  StationAppender(Path file) {
    this.file = file;
  }

  /**
   * Writes the file anew in one step; {@link BadInput} when the result would be no station file.
   */
  void add(String name, String kind, LinkSettings link, Object profile, Indicator indicator) {
    ObjectNode station = YAML.createObjectNode();
    station.put("name", name);
    station.set(
        "link",
        YAML.createObjectNode().put("kind", kind).setAll((ObjectNode) YAML.valueToTree(link)));
    station.set("profile", YAML.valueToTree(profile));
    station.set("indicator", YAML.valueToTree(indicator));
    try {
      String before = Files.exists(file) ? Files.readString(file) : "stations:\n";
      String after = (before.endsWith("\n") ? before : before + "\n") + item(before, station);
      StationFile.parse(after, file.toString());
      replace(after);
    } catch (IOException e) {
      throw new BadInput("--save", file, "can't be written", "a file this user may write");
    }
  }

  private static String item(String before, ObjectNode station) throws JsonProcessingException {
    Matcher first = ITEM.matcher(before);
    String indent = first.find() ? first.group(1) : "  ";
    String text =
        YAML.writeValueAsString(station)
            .lines()
            .collect(Collectors.joining("\n" + indent + "  ", indent + "- ", "\n"));
    return text;
  }

  private void replace(String text) throws IOException {
    Path whole = file.toAbsolutePath();
    Path next = whole.resolveSibling(whole.getFileName() + ".new");
    Files.writeString(next, text);
    Files.move(next, whole, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
  }
}
