package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.Set;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.chordlog.station.StationFile;
import org.chordlog.station.StationSettings;
import org.chordlog.station.Stations;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Stations that are added at the pages while others are: what was acknowledged is in the file. */
@Tag("slow")
final class AddedStationsTest {
  private static final int AT_ONCE = 8;
  @TempDir Path directory;

  private static String body(int i) {
    return """
        {"station": {"name": "S%d", "machine": "bender %d", "profile": "signed-mm-lines",
          "link": {"kind": "serial", "port": "/dev/none-%d"},
          "indicator": {"resolutionMm": 0.001, "permissibleErrorMm": 0.003, "travelMm": 12.7}}}
        """
        .formatted(i, i, i);
  }

  /** Status codes of stations from..to, sent by {@value #AT_ONCE} callers. */
  private static List<Integer> add(Served served, int from, int to) throws Exception {
    ExecutorService callers = Executors.newFixedThreadPool(AT_ONCE);
    try {
      List<Future<Integer>> answers =
          IntStream.rangeClosed(from, to)
              .mapToObj(
                  i -> callers.submit(() -> served.post("/api/stations", body(i)).statusCode()))
              .toList();
      return answers.stream().map(AddedStationsTest::of).toList();
    } finally {
      callers.shutdown();
    }
  }

  private static Integer of(Future<Integer> answer) {
    try {
      return answer.get();
    } catch (Exception e) {
      throw new IllegalStateException(e);
    }
  }

  private static Set<String> names(List<StationSettings> stations) {
    return stations.stream().map(StationSettings::name).collect(Collectors.toSet());
  }

  @Test
  void allThatWereAcknowledgedAtOnceAreInTheFile() throws Exception {
    try (Served served = new Served(directory)) {
      assertEquals(Set.of(201), Set.copyOf(add(served, 1, AT_ONCE)));
      assertEquals(AT_ONCE + 1, StationFile.read(served.stationFile).size());
      assertEquals(names(served.stations.settings()), names(StationFile.read(served.stationFile)));
    }
  }

  @Test
  void theStationThatIsOneTooManyIsNotInTheFile() throws Exception {
    try (Served served = new Served(directory)) {
      List<Integer> answers = add(served, 1, Stations.MOST + 1);
      assertEquals(Stations.MOST - 1, answers.stream().filter(code -> code == 201).count());
      assertEquals(2, answers.stream().filter(code -> code == 400).count());
      assertEquals(Stations.MOST, StationFile.read(served.stationFile).size());
      assertEquals(names(served.stations.settings()), names(StationFile.read(served.stationFile)));
    }
  }

  /** Devices, pipes and files of elsewhere can't be read through a station. */
  @Test
  void onlyRecordingsBesideTheStationFileAreTakenFromAPage() throws Exception {
    try (Served served = new Served(directory)) {
      Path elsewhere = Files.createTempFile("recording", ".txt");
      Files.createSymbolicLink(directory.resolve("link.txt"), elsewhere);
      for (String file :
          List.of("/dev/zero", elsewhere.toString(), directory.resolve("link.txt").toString())) {
        String replay = body(1).replaceAll("\"link\": \\{[^}]*}", replay(file));
        var refused = served.post("/api/stations", replay);
        assertEquals(400, refused.statusCode(), file);
        assertEquals("link.file", Served.tree(refused).at("/faults/0/field").asText());
      }
      Path own = Files.writeString(directory.resolve("own.txt"), "0 2b30352e3132330d0a\n");
      String replay = body(1).replaceAll("\"link\": \\{[^}]*}", replay(own.toString()));
      assertEquals(201, served.post("/api/stations", replay).statusCode());
      Files.delete(elsewhere);
    }
  }

  private static String replay(String file) {
    return "\"link\": {\"kind\": \"replay\", \"file\": \"" + file + "\"}";
  }

  @Test
  void theFileKeepsItsPermissionsAndTheLinkThatLeadsToIt() throws Exception {
    try (Served served = new Served(directory)) {
      Path real = Files.createDirectory(directory.resolve("etc")).resolve("real.yaml");
      Files.move(served.stationFile, real);
      Files.createSymbolicLink(served.stationFile, real);
      Files.setPosixFilePermissions(real, PosixFilePermissions.fromString("rw-r-----"));
      assertEquals(201, served.post("/api/stations", body(1)).statusCode());
      assertTrue(Files.isSymbolicLink(served.stationFile));
      assertEquals(
          "rw-r-----",
          PosixFilePermissions.toString(
              Files.getPosixFilePermissions(real, LinkOption.NOFOLLOW_LINKS)));
      assertEquals(2, StationFile.read(real).size());
    }
  }
}
