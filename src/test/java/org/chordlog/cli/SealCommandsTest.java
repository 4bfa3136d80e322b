package org.chordlog.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import java.util.List;
import org.chordlog.cli.common.ExitCode;
import org.chordlog.harness.Ran;
import org.chordlog.measure.JobEvent;
import org.chordlog.measure.Reading;
import org.chordlog.measure.Recorded;
import org.chordlog.report.CsvSeal;
import org.chordlog.store.Kept;
import org.chordlog.store.Some;
import org.chordlog.store.Store;
import org.chordlog.store.open.Stores;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What somebody who doubts the records can find out with the commands. */
final class SealCommandsTest {
  @TempDir Path folder;
  private Path data;
  private Path csv;

  @BeforeEach
  void fill() {
    data = folder.resolve("data");
    csv = folder.resolve("readings.csv");
    try (Store store = Stores.open(data)) {
      Reading first = Kept.first(store);
      for (int i = 1; i <= 12; i++) {
        Reading unused =
            store.readings().append(Some.reading("A", i, first.jobId(), first.setUpId())).join();
      }
      store.readings().add(Some.exclusion(2, true));
    }
    assertEquals(
        ExitCode.WELL,
        Ran.command("export", "--seal", "--data", data.toString(), "--output", csv.toString())
            .code());
  }

  private Ran verify(String... more) {
    return Ran.command(List.of("verify", csv.toString()), more);
  }

  /** A byte order mark in front, and the last line filled up with empty cells. */
  @Test
  void aFileThatASpreadsheetSavedIsNotSaidToLackItsSeal() throws Exception {
    String text = Files.readString(csv);
    Files.writeString(csv, "\ufeff" + text.stripTrailing() + ",,,,\r\n");
    Ran alone = verify();
    assertEquals(ExitCode.FAULT, alone.code());
    assertTrue(alone.out().contains("a spreadsheet changes a file when it saves it"), alone.out());
    Ran compared = verify("--data", data.toString());
    assertEquals(1, compared.out().lines().count(), "no reading differs: " + compared.out());
  }

  /** Exported before there were phases, which are no part of a reading. */
  @Test
  void anOlderFileWithoutPhasesIsStillWhatIsStored() throws Exception {
    String text = Files.readString(csv);
    int at = text.indexOf(CsvSeal.BEGIN);
    String older = text.substring(0, at).replaceAll(",(phase|\\d+)\r\n", "\r\n");
    assertTrue(older.lines().findFirst().orElseThrow().endsWith(",set_up"), older);
    byte[] bytes = older.getBytes(StandardCharsets.UTF_8);
    String sum = "sha256=" + CsvSeal.sum(bytes, bytes.length);
    Files.writeString(csv, older + text.substring(at).replaceAll("sha256=[0-9a-f]{64}", sum));
    Ran compared = verify("--data", data.toString());
    assertEquals(ExitCode.WELL, compared.code(), compared.out());
  }

  private void nameTheLotAnew() {
    try (Store store = Stores.open(data)) {
      JobEvent.Content lot = new JobEvent.Content(null, null, "lot 11", "misread");
      JobEvent unused =
          store
              .jobs()
              .add(
                  new JobEvent(
                      0,
                      1,
                      "M",
                      JobEvent.Kind.MATERIAL_LOT,
                      0,
                      lot,
                      new Recorded(Long.MAX_VALUE / 2, "me")));
    }
  }

  private void edit(String sql) throws Exception {
    try (Connection connection =
            DriverManager.getConnection("jdbc:sqlite:" + data.resolve("chordlog.db"));
        Statement statement = connection.createStatement()) {
      assertTrue(statement.executeUpdate(sql) >= 1); // and what triggers note of it
    }
  }

  @Test
  void anExportIsVerifiedByItselfAndAgainstTheData() {
    Ran alone = verify();
    assertEquals(ExitCode.WELL, alone.code(), alone.out() + alone.err());
    assertTrue(alone.out().contains("12 readings: the sum in the file is right"), alone.out());
    Ran compared = verify("--data", data.toString());
    assertEquals(ExitCode.WELL, compared.code(), compared.out() + compared.err());
    assertTrue(compared.out().contains("12 readings: all are as stored"), compared.out());
    nameTheLotAnew();
    compared = verify("--data", data.toString());
    assertEquals(ExitCode.WELL, compared.code(), compared.out() + compared.err());
  }

  /** What is measured later, excluded or named otherwise does not make an older export wrong. */
  @Test
  void anOlderExportStaysRight() {
    try (Store store = Stores.open(data)) {
      store.readings().add(Some.exclusion(2, false));
      Reading first = store.readings().find(1).orElseThrow();
      Reading unused =
          store.readings().append(Some.reading("A", 13, first.jobId(), first.setUpId())).join();
    }
    Ran compared = verify("--data", data.toString());
    assertEquals(ExitCode.WELL, compared.code(), compared.out() + compared.err());
  }

  @Test
  void aChangedFileIsFoundAndWithANewSumTheDataTells() throws Exception {
    String text = Files.readString(csv);
    String other = text.replaceFirst("\r\n1,A,1,", "\r\n1,A,2,");
    Files.writeString(csv, other);
    Ran alone = verify();
    assertEquals(ExitCode.FAULT, alone.code());
    assertTrue(alone.out().contains("its sum differs"), alone.out());
    int seal = other.lastIndexOf("# Chordlog seal");
    byte[] bytes = other.getBytes(StandardCharsets.UTF_8);
    int length = other.substring(0, seal).getBytes(StandardCharsets.UTF_8).length;
    String sum = CsvSeal.sum(bytes, length);
    Files.writeString(csv, other.replaceFirst("sha256=[0-9a-f]+", "sha256=" + sum));
    assertEquals(ExitCode.WELL, verify().code());
    Ran compared = verify("--data", data.toString());
    assertEquals(ExitCode.FAULT, compared.code());
    assertTrue(
        compared.out().contains("reading 1: station_sequence is 2 in the file and 1 in the data"),
        compared.out());
  }

  @Test
  void anExportShowsThatTheDataWereEditedSince() throws Exception {
    edit("UPDATE reading SET depth_nm = depth_nm + 1 WHERE id = 4");
    Ran compared = verify("--data", data.toString());
    assertEquals(ExitCode.FAULT, compared.code());
    assertTrue(compared.out().contains("reading 4: depth_nm is"), compared.out());
    assertTrue(compared.out().contains("seal: reading 4 was altered"), compared.out());
    Ran audit = Ran.command("audit", "--data", data.toString());
    assertEquals(ExitCode.FAULT, audit.code());
    assertTrue(audit.out().contains("Wrong: seal: reading 4 was altered"), audit.out());
    assertTrue(audit.out().contains("Note: seal: this database was begun"), audit.out());
    assertTrue(audit.out().strip().endsWith("1 thing is wrong."), audit.out());
  }

  @Test
  void auditTellsTheNewestEntryWhichIsAnAnchorLater() throws Exception {
    Ran first = Ran.command("audit", "--json", "--data", data.toString());
    JsonNode seal = new JsonMapper().readTree(first.out()).get("seal");
    String anchor = seal.get("newest").asText();
    assertEquals(64, seal.get("measuringPart").asText().length());
    String key = seal.get("key").asText();
    String[] known = {"audit", "--data", data.toString(), "--anchor", anchor, "--key", key};
    assertEquals(ExitCode.WELL, Ran.command(known).code());
    edit("DELETE FROM exclusion");
    edit("DELETE FROM seal WHERE seq = (SELECT max(seq) FROM seal)");
    Files.delete(data.resolve("seal-checkpoints.txt"));
    assertEquals(ExitCode.FAULT, Ran.command(known).code());
    assertTrue(Ran.command(known).out().contains("before the anchor"));
    Ran nonsense = Ran.command("audit", "--data", data.toString(), "--anchor", "12");
    assertEquals(ExitCode.BAD_INPUT, nonsense.code());
    assertTrue(nonsense.err().contains("SEQ:HASH"), nonsense.err());
    Ran noKey = Ran.command("audit", "--data", data.toString(), "--key", "12");
    assertEquals(ExitCode.BAD_INPUT, noKey.code());
    assertEquals(
        "--key: 12 is not a fingerprint; allowed: 16 hexadecimal digits", noKey.err().strip());
  }
}
