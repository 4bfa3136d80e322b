package org.chordlog.yaml;

import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonProcessingException;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.chordlog.measure.BadInput;

/** What is wrong with text that is no YAML, with its place and without names of the library. */
public final class YamlFaults {
  private static final Pattern PLACE = Pattern.compile("line:? (\\d+), column:? (\\d+)");
  private static final String TAB = "has a tab; YAML is indented with blanks";
  private static final String OTHER = "is not YAML: a key or value does not belong here";

  private YamlFaults() {}

  /** {@code setting} names the file's option, {@code kind} what such a file is. */
  public static BadInput of(JsonProcessingException e, String setting, String name, String kind) {
    String message = String.valueOf(e.getMessage());
    String place = place(message);
    JsonLocation location = e.getLocation();
    if (place.isEmpty() && location != null) {
      place = " line " + location.getLineNr() + " column " + location.getColumnNr();
    }
    return new BadInput(setting, name + place, problem(message), kind);
  }

  /** The reader names first where it began and last what it met. */
  private static String place(String message) {
    Matcher matcher = PLACE.matcher(message);
    String place = "";
    while (matcher.find() && !message.substring(0, matcher.start()).contains("[Source")) {
      place = " line " + matcher.group(1) + " column " + matcher.group(2);
    }
    return place;
  }

  private static String problem(String message) {
    if (message.contains("(TAB)")) {
      return TAB;
    }
    List<String> said =
        message
            .lines()
            .map(String::strip)
            .filter(line -> line.matches("(found|expected|could not|mapping values|Duplicate).*"))
            .filter(line -> !line.contains("org.") && !line.contains("com."))
            .toList();
    return said.isEmpty() ? OTHER : "is not YAML: " + said.get(said.size() - 1);
  }
}
