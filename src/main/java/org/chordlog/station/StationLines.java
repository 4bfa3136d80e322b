package org.chordlog.station;

import java.nio.file.Path;
import java.util.List;
import java.util.stream.IntStream;
import org.chordlog.measure.BadInput;

/**
 * The lines of one station in a station file laid out with one item '- name: …' a station. Remarks
 * before an item belong to that item.
 *
 * @param first the line of the item's dash, from 0
 * @param end the line after its last one
 */
record StationLines(List<String> lines, int first, int end, String indent) {
  /** Finds them; {@link BadInput} where the layout is another one. */
  static StationLines of(String yaml, String name, Path file) {
    List<String> lines = yaml.lines().toList();
    String indent = indentOf(yaml);
    int[] starts =
        IntStream.range(0, lines.size())
            .filter(i -> lines.get(i).startsWith(indent + "- "))
            .toArray();
    for (int i = 0; i < starts.length; i++) {
      int end = i + 1 < starts.length ? beforeRemarks(lines, starts[i + 1]) : lines.size();
      if (isNamed(lines.subList(starts[i], end), indent, name)) {
        return new StationLines(lines, starts[i], end, indent);
      }
    }
    throw laidOutOtherwise(file);
  }

  /** As deep as the items that are there. */
  static String indentOf(String yaml) {
    return yaml.lines()
        .filter(line -> line.stripLeading().startsWith("- "))
        .findFirst()
        .map(line -> line.substring(0, line.indexOf('-')))
        .orElse("  ");
  }

  static BadInput laidOutOtherwise(Path file) {
    return new BadInput(
        "config",
        file,
        "is laid out in a way that can't be changed from here",
        "a list 'stations:', one item '- name: …' a station; or change the file by hand");
  }

  /** Remarks and empty lines right before an item go with it. */
  private static int beforeRemarks(List<String> lines, int start) {
    int at = start;
    while (at > 0
        && (lines.get(at - 1).isBlank() || lines.get(at - 1).stripLeading().startsWith("#"))) {
      at--;
    }
    return at;
  }

  private static boolean isNamed(List<String> item, String indent, String name) {
    String plain = "name: " + name;
    String quoted = "name: \"" + name + "\"";
    return item.stream()
        .map(line -> line.substring(Math.min(line.length(), indent.length() + 2)))
        .map(String::strip)
        .anyMatch(line -> line.equals(plain) || line.equals(quoted));
  }

  /** The file with that station's item written anew. */
  String with(StationSettings station) {
    return joined(lines.subList(0, first))
        + StationNode.item(station, indent)
        + joined(lines.subList(end, lines.size()));
  }

  /** The file without that station; an empty list where it was the only one. */
  String without() {
    String before = joined(lines.subList(0, beforeRemarks(lines, first)));
    String after = joined(lines.subList(end, lines.size()));
    boolean others = (before + after).lines().anyMatch(line -> line.startsWith(indent + "- "));
    return others
        ? before + after
        : before.replaceFirst("stations:\\s*$", "stations: []\n") + after;
  }

  private static String joined(List<String> lines) {
    return lines.isEmpty() ? "" : String.join("\n", lines) + "\n";
  }
}
