package org.chordlog.station;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.chordlog.decode.BuiltInProfile;
import org.chordlog.link.SerialSettings;
import org.chordlog.measure.BadInput;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Changing and removing stations leaves the rest of the file as somebody wrote it. */
final class StationFileKeeperTest {
  @TempDir private Path directory;
  private Path file;
  private StationKeeper keeper;

  @BeforeEach
  void threeStations() throws Exception {
    file = directory.resolve("stations.yaml");
    keeper = new StationFileKeeper(file);
    keeper.add(station("a", "/dev/a"));
    Files.writeString(file, "# our benders\n" + Files.readString(file) + "  # the middle one\n");
    keeper.add(station("b", "/dev/b"));
    Files.writeString(file, Files.readString(file) + "\n  # by the door\n");
    keeper.add(station("c", "/dev/c"));
  }

  private static StationSettings station(String name, String port) {
    return StationSettings.of(
            name,
            SerialSettings.of(port),
            BuiltInProfile.SIGNED_MM_LINES.profile(),
            StationRig.INDICATOR)
        .machine("bender")
        .capture(StationRig.settled())
        .build();
  }

  private List<String> remarks() throws Exception {
    return Files.readAllLines(file).stream()
        .map(String::strip)
        .filter(line -> line.startsWith("#"))
        .toList();
  }

  @Test
  void aChangedStationStandsInItsPlace() throws Exception {
    keeper.replace(station("b", "/dev/other"));
    assertEquals(
        List.of(station("a", "/dev/a"), station("b", "/dev/other"), station("c", "/dev/c")),
        StationFile.read(file));
    assertEquals(List.of("# our benders", "# the middle one", "# by the door"), remarks());
  }

  @Test
  void aRemovedStationTakesTheRemarkBeforeItAlong() throws Exception {
    keeper.remove("b");
    assertEquals(List.of(station("a", "/dev/a"), station("c", "/dev/c")), StationFile.read(file));
    assertEquals(List.of("# our benders", "# by the door"), remarks());
  }

  @Test
  void thePortOfAnotherIsRefusedAndTheFileStays() throws Exception {
    String before = Files.readString(file);
    BadInput refused = assertThrows(BadInput.class, () -> keeper.replace(station("b", "/dev/a")));
    assertEquals("link", refused.faults().get(0).field());
    assertEquals(before, Files.readString(file));
  }

  @Test
  void anotherLayoutIsRefusedAndTheFileStays() throws Exception {
    String flow =
        "{\"stations\": [{\"name\": \"a\", \"link\": {\"kind\": \"tcp\", \"host\": \"h\","
            + " \"port\": 4001}, \"machine\": \"m\", \"profile\": \"signed-mm-lines\", \"indicator\":"
            + " {\"resolutionMm\": 0.001, \"permissibleErrorMm\": 0.003, \"travelMm\": 12.5}}]}";
    Files.writeString(file, flow);
    BadInput refused = assertThrows(BadInput.class, () -> keeper.remove("a"));
    assertEquals("config", refused.faults().get(0).field());
    assertEquals(flow, Files.readString(file));
  }
}
