package org.chordlog.station;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import org.chordlog.link.SerialSettings;
import org.chordlog.measure.BadInput;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Names and numbers of a station file, which YAML may read in several ways. */
final class StationFileNamesTest {
  /** Words that YAML reads as truth are no other name without a word. */
  @Test
  void aNameIsTakenAsItWasWrittenOrRefused() {
    for (String name : List.of("no", "off", "Yes", "true", "~")) {
      String said;
      try {
        said = StationFile.parse(StationFiles.GOOD.replace("rolls-1", name), "test").get(0).name();
      } catch (BadInput refused) {
        said = refused.faults().get(0).field();
      }
      assertTrue(List.of(name, "stations[0].name").contains(said), name + " became " + said);
    }
  }

  /** YAML reads 010 as 8 and 1e3 as 1000.0: right for a number, wrong for a name. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "7",
        "010",
        "0010",
        "1e3",
        "1.50",
        "1_000",
        "0x1F",
        "00123456712345",
        "123456789.10"
      })
  void aNameOfDigitsIsTakenAsItWasWritten(String name) {
    String yaml =
        StationFiles.GOOD.replace("three-roll bender", name).replace("name: long", "name: " + name);
    StationSettings station = StationFile.parse(yaml.replace("rolls-1", name), "test").get(0);
    assertEquals(
        List.of(name, name, name),
        List.of(
            station.name(), station.machine(), Objects.requireNonNull(station.bridge()).name()));
  }

  @Test
  void aNumberIsStillOne() {
    String yaml = StationFiles.GOOD.replace("rate: 4800", "rate: 1_200").replace("0.004", "4e-3");
    StationSettings station = StationFile.parse(yaml, "test").get(0);
    assertEquals(1200, ((SerialSettings) station.link()).rate());
    assertEquals(0.004, station.capture().bandMm());
  }

  @Test
  void aStationWhoseNameIsOfDigitsIsWrittenAsItIsRead(@TempDir Path folder) throws Exception {
    String yaml = StationFiles.GOOD.replace("rolls-1", "010").replace("three-roll bender", "1e3");
    StationSettings station = StationFile.parse(yaml, "test").get(0);
    Path file = folder.resolve("stations.yaml");
    StationFileWriter.append(file, station);
    assertEquals(List.of(station), StationFile.read(file));
  }
}
