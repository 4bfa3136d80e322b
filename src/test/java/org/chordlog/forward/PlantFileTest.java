package org.chordlog.forward;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import org.chordlog.measure.BadInput;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class PlantFileTest {
  private static final String GOOD =
      """
      edge: bending shop 1
      site: north works
      database: postgresql://db1.example:5432,db2.example/plant
      user: chordlog_edge_shop_1
      passwordFile: plant.secret
      kilobytesASecond: 200
      """;

  @TempDir Path directory;

  @BeforeEach
  void secret() throws Exception {
    Path file = Files.writeString(directory.resolve("plant.secret"), "an invented secret\n");
    Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rw-------"));
  }

  private PlantSettings read(String yaml) throws Exception {
    return PlantFile.read(Files.writeString(directory.resolve(PlantFile.NAME), yaml));
  }

  @Test
  void everyKeyIsRead() throws Exception {
    PlantSettings read = read(GOOD);
    assertEquals("bending shop 1", read.edge());
    assertEquals("north works", read.site());
    assertEquals(200, read.kilobytesASecond());
    assertEquals("an invented secret", read.address().password().get());
    assertEquals("postgresql://db1.example:5432,db2.example:5432/plant", read.address().url());
    assertEquals(0, read(GOOD.replace("kilobytesASecond: 200", "")).kilobytesASecond());
  }

  @Test
  void aNameOfDigitsIsTakenAsItWasWritten() throws Exception {
    PlantSettings read = read(GOOD.replace("bending shop 1", "010").replace("north works", "1e3"));
    assertEquals("010", read.edge());
    assertEquals("1e3", read.site());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "edge: bending shop 1            | edge: ''                 | edge",
        "site: north works               |                          | site",
        "user: chordlog_edge_shop_1      |                          | user",
        "passwordFile: plant.secret      | passwordFile: none       | passwordFile",
        "kilobytesASecond: 200           | kilobytesASecond: 1      | kilobytesASecond",
        "kilobytesASecond: 200           | kilobytesASecond: fast   | kilobytesASecond",
        "kilobytesASecond: 200           | kiloBytes: 200           | kiloBytes",
        "kilobytesASecond: 200           | trustedCertificates: no  | trustedCertificates",
        "postgresql://db1.example:5432,  | postgresql://me:pw@      | database",
        "postgresql://db1.example:5432,  | mysql://                 | database"
      })
  void whatIsWrongIsToldByItsKey(String from, String to, String key) {
    String yaml = GOOD.replace(from, to == null ? "" : to);
    BadInput e = assertThrows(BadInput.class, () -> read(yaml));
    assertTrue(e.faults().get(0).field().contains(key), e::toString);
    assertTrue(!e.toString().contains("me:pw"), e::toString);
  }
}
