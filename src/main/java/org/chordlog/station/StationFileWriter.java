package org.chordlog.station;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.chordlog.measure.BadInput;

/**
 * Adds a station to a station file. The new one is put behind the others and the text before it is
 * left as it is, comments too; the file is replaced in one step, and only when it reads back as
 * meant.
 */
public final class StationFileWriter {
  private StationFileWriter() {}

  /** Appends the station; makes the file when there is none. */
  public static void append(Path file, StationSettings station) {
    StationFileChange.of(file, before -> appended(before, file, station));
  }

  private static String appended(String before, Path file, StationSettings station) {
    List<StationSettings> meant =
        new ArrayList<>(before.isBlank() ? List.of() : StationFile.parseFile(before, file));
    refuseSamePort(station, meant);
    meant.add(station);
    String head = before.isBlank() ? "stations:\n" : ended(withoutEmptyList(before));
    String after = head + StationNode.item(station, StationLines.indentOf(before));
    if (!readsAs(after, meant)) {
      throw new BadInput(
          "config",
          file,
          "is laid out in a way that can't be added to",
          "a list 'stations:' at the end of the file, one item '- name: …' a station");
    }
    return after;
  }

  static void refuseSamePort(StationSettings station, List<StationSettings> others) {
    for (StationSettings other : others) {
      StationSettings.PortUse shared = station.portSharedWith(other);
      if (shared != null) {
        throw new BadInput(
            shared.key(),
            shared.target(),
            "is the port of station " + other.name() + " too",
            "a port of its own");
      }
    }
  }

  /** A list without stations, as in "stations: []", becomes one that can be added to. */
  private static String withoutEmptyList(String text) {
    return text.replaceFirst("(?m)^(\\s*stations:)[ \\t]*\\[\\s*\\]", "$1");
  }

  private static String ended(String text) {
    return text.endsWith("\n") ? text : text + "\n";
  }

  static boolean readsAs(String yaml, List<StationSettings> meant) {
    try {
      return StationFile.parse(yaml, "new").equals(meant);
    } catch (BadInput e) {
      return false;
    }
  }
}
