package org.chordlog.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.Reader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.DriverManager;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.chordlog.harness.Ran;
import org.chordlog.measure.CapturedDepth;
import org.chordlog.measure.Exclusion;
import org.chordlog.measure.RadiusEstimate;
import org.chordlog.measure.Reading;
import org.chordlog.measure.Sample;
import org.chordlog.measure.SetUp;
import org.chordlog.radius.RadiusModel;
import org.chordlog.store.Kept;
import org.chordlog.store.Some;
import org.chordlog.store.Store;
import org.chordlog.store.open.Stores;
import org.chordlog.store.sqlite.SqliteStore;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class StoreCommandsTest {
  @TempDir Path directory;
  private final List<Reading> kept = new ArrayList<>();
  private final StringBuilder out = new StringBuilder();
  private final StringBuilder err = new StringBuilder();

  @BeforeEach
  void fill() {
    try (Store store = Stores.open(directory, Some.KEEPING_ALL)) {
      Reading first = Kept.first(store);
      SetUp setUp = store.readings().setUp(first.setUpId()).orElseThrow();
      RadiusModel model = RadiusModel.of(setUp);
      for (int i = 1; i <= 40; i++) {
        Reading reading = computed(Some.reading("A", i, first.jobId(), first.setUpId()), model);
        kept.add(store.readings().append(reading).join());
      }
      store.readings().add(new Exclusion(0, 3, true, "knocked, \"twice\"", Some.T0, "me"));
      store.traces().append("A", List.of(new Sample(1, 0, Some.T0, 10_000, 0, true)));
    }
  }

  private static Reading computed(Reading reading, RadiusModel model) {
    CapturedDepth captured = reading.captured();
    long depth = captured.valueNm() - Objects.requireNonNull(model.setUp().zero()).valueNm();
    RadiusEstimate radius = model.estimate(depth, captured.scatterNm(), captured.sampleCount());
    return new Reading(
        0,
        reading.source(),
        reading.place(),
        new Reading.Measured(captured, depth, reading.setUpId()),
        new Reading.Result(radius, reading.decision(), reading.marks()),
        reading.circumstances());
  }

  @Test
  void exportCarriesWhatARadiusIsComputedFrom() throws Exception {
    Path csv = directory.resolve("out.csv");
    assertEquals(0, run("export", "--job", "1", "--output", csv.toString()));
    List<CSVRecord> rows = parse(csv);
    assertEquals(40, rows.size());
    for (int i = 0; i < 40; i++) {
      CSVRecord row = rows.get(i);
      assertEquals(kept.get(i).captured().valueNm(), Long.parseLong(row.get("value_nm")));
      assertEquals(kept.get(i).depthNm(), Long.parseLong(row.get("depth_nm")));
      assertEquals(kept.get(i).radius().radiusMm(), Double.valueOf(row.get("radius_mm")));
    }
    assertEquals("knocked, \"twice\"", rows.get(2).get("excluded_reason"));
    double span =
        new JsonMapper().readTree(rows.get(0).get("set_up")).at("/bridge/spanMm").doubleValue();
    assertEquals(200.013, span);
  }

  /** As spreadsheets read it where a comma is the decimal mark; read back it says the same. */
  @Test
  void exportWithDecimalCommas() throws Exception {
    Path points = directory.resolve("points.csv");
    Path commas = directory.resolve("commas.csv");
    assertEquals(0, run("export", "--output", points.toString()));
    assertEquals(0, run("export", "--decimal", "comma", "--output", commas.toString()));
    List<CSVRecord> rows = parse(commas, CSVFormat.RFC4180.builder().setDelimiter(';'));
    for (int i = 0; i < rows.size(); i++) {
      String radius = rows.get(i).get("radius_mm");
      assertTrue(radius.matches("\\d+,\\d+"), radius);
      assertEquals(parse(points).get(i).get("radius_mm"), radius.replace(',', '.'), radius);
      assertEquals(parse(points).get(i).get("set_up"), rows.get(i).get("set_up"));
    }
    Ran expected = analysed(points);
    assertEquals(expected.out(), analysed(commas).out());
    assertEquals(2, run("export", "--decimal", "comma", "--seal", "--output", commas.toString()));
    assertTrue(err.toString().contains("comma is for readings or changes as CSV"), err::toString);
  }

  private static Ran analysed(Path file) {
    String[] limits = {"--lsl", "1000", "--usl", "3000"};
    return Ran.command(
        Stream.concat(
                Stream.of("analyse", file.toString(), "--column", "radius_mm"), Stream.of(limits))
            .toArray(String[]::new));
  }

  @Test
  void exportOfSamples() throws Exception {
    Path csv = directory.resolve("samples.csv");
    assertEquals(0, run("export", "--samples", "A", "--output", csv.toString(), "--json"));
    assertEquals("10000", parse(csv).get(0).get("value_nm"));
    assertEquals("{\"samples\": 1}", out.toString().strip());
  }

  @Test
  void anExportNeverReplacesWhatTheDataDirectoryHolds() throws Exception {
    Path lock = directory.resolve("chordlog.lock");
    Path link = directory.resolveSibling(directory.getFileName() + "-link.csv");
    Files.createSymbolicLink(link, directory.resolve(SqliteStore.FILE_NAME));
    byte[] before = Files.readAllBytes(directory.resolve(SqliteStore.FILE_NAME));
    assertEquals(2, run("export", "--output", lock.toString()));
    assertEquals(2, run("export", "--output", link.toString()));
    assertEquals(0, Files.size(lock));
    assertArrayEquals(before, Files.readAllBytes(directory.resolve(SqliteStore.FILE_NAME)));
    Files.delete(link);
  }

  @Test
  void anExportNeverReplacesABackup() throws Exception {
    Path backup = directory.resolveSibling(directory.getFileName() + "-backup.db");
    assertEquals(0, run("backup", backup.toString()));
    byte[] before = Files.readAllBytes(backup);
    assertEquals(2, run("export", "--output", backup.toString()));
    assertTrue(err.toString().contains("is a database, perhaps a backup"), err::toString);
    assertArrayEquals(before, Files.readAllBytes(backup));
    Files.delete(backup);
  }

  /** As on a full disk: /dev/full takes no byte (full(4)). */
  @Test
  void anExportThatFailsLeavesNothingHalfWritten() throws Exception {
    Path out = directory.resolve("out.csv");
    assertEquals(0, run("export", "--output", out.toString()));
    try (var all = Files.list(directory)) {
      assertTrue(all.noneMatch(each -> each.toString().endsWith(".part")));
    }
    assertEquals(2, run("export", "--output", "/dev/full"));
    assertTrue(err.toString().contains("the disk is full"), err::toString);
    err.setLength(0);
    assertEquals(2, run("export", "--format", "qif", "--job", "1", "--output", "/dev/full"));
    assertTrue(err.toString().contains("the disk is full"), err::toString);
  }

  @Test
  void exportRefusesWhatItWouldPassOver() {
    assertEquals(2, run("export", "--from", "5"));
    assertTrue(err.toString().contains("--from counts samples, not readings"), err::toString);
    assertEquals(2, run("export", "--samples", "A", "--job", "1"));
    assertEquals(2, run("export", "--samples", "A", "--seal"));
  }

  @Test
  void recomputeAgreesBitForBitAndNamesWhatDoesNot() throws Exception {
    assertEquals(0, run("recompute"));
    assertTrue(out.toString().contains("40 readings recomputed, 0 differ"), out::toString);
    change("UPDATE reading SET depth_nm = depth_nm + 1 WHERE id = 7");
    change("UPDATE reading SET radius_mm = radius_mm * (1 + 2.3e-16) WHERE id = 9");
    assertEquals(1, run("recompute"));
    assertTrue(out.toString().contains("reading 7: depth_nm"), out::toString);
    assertTrue(out.toString().contains("reading 9: radius_mm is "), out::toString);
    assertTrue(out.toString().contains("2 differ"), out::toString);
    assertFalse(out.toString().contains("No more than"), out::toString);
  }

  /** Each figure by its column's name; a reading without a radius of its own says why. */
  @Test
  void recomputeSaysInWordsWhatDiffers() throws Exception {
    change("UPDATE reading SET lower_mm = 17.5, upper_mm = NULL WHERE id = 7");
    change("UPDATE reading SET value_nm = 9000000 WHERE id = 9");
    assertEquals(1, run("recompute"));
    assertTrue(out.toString().contains("reading 7: lower_mm is 17.5, comes out as"), out::toString);
    assertTrue(out.toString().contains("reading 7: upper_mm is none, comes out as"), out::toString);
    assertTrue(out.toString().contains("comes out as nothing: "), out::toString);
    assertFalse(out.toString().contains("RadiusEstimate"), out::toString);
    assertFalse(out.toString().contains("org.chordlog"), out::toString);
    change("UPDATE reading SET coverage_factor = 3, depth_nm = 1, lower_mm = 3");
    assertEquals(1, run("recompute"));
    assertTrue(out.toString().contains("No more than 100 differences are listed."));
  }

  @Test
  void auditFindsWhatIsWrong() throws Exception {
    assertEquals(0, run("audit"));
    change("DELETE FROM reading WHERE id = 20");
    change("UPDATE trace_block SET last_sample = 2");
    assertEquals(1, run("audit"));
    assertTrue(out.toString().contains("job 1: its total"), out::toString);
    assertTrue(out.toString().contains("between sequence 1 and 40"), out::toString);
    assertTrue(out.toString().contains("trace block 1"), out::toString);
  }

  @Test
  void backupAndRestoreBringEverythingBack() throws Exception {
    Path copy = directory.resolve("copy.db");
    try (Store service = Stores.open(directory)) {
      assertEquals(0, run("backup", copy.toString()));
      assertEquals("", service.health().fault());
      assertEquals(2, run("restore", copy.toString()), "a service is running");
    }
    assertEquals(2, run("backup", copy.toString()));
    assertTrue(err.toString().contains("FILE: " + copy + " exists"), err::toString);
    change("UPDATE reading SET depth_nm = 0");
    assertEquals(0, run("restore", copy.toString()), err::toString);
    try (Store store = Stores.openForReading(directory)) {
      assertEquals(kept, store.readings().all(0, 100));
    }
    try (var entries = Files.list(directory)) {
      assertTrue(entries.anyMatch(each -> each.toString().contains("replaced-")));
    }
  }

  @Test
  void aBackupIntoNoFolderIsToldInWords() {
    Path nowhere = directory.resolve("nowhere/copy.db");
    assertEquals(2, run("backup", nowhere.toString()));
    assertEquals(
        "FILE: "
            + nowhere
            + " can't be written: its folder does not exist;"
            + " allowed: a folder that can be written",
        err.toString().strip());
  }

  @Test
  void restoreRefusesWhatIsNoSoundBackup() throws Exception {
    Path text = Files.writeString(directory.resolve("text.db"), "no database".repeat(500));
    assertEquals(2, run("restore", text.toString()));
    assertEquals(2, run("restore", directory.resolve("none").toString()));
    assertEquals(0, run("audit"), "nothing was touched");
  }

  @Test
  void badInputIsOneLineAndExitCodeTwo() {
    assertEquals(2, run("export", "--job", "77"));
    assertTrue(err.toString().startsWith("--job: 77 does not exist"), err::toString);
    assertEquals(2, run("recompute", "--job", "77"));
    assertEquals(2, run("export", "--samples", "Z"));
    assertTrue(err.toString().contains("--samples: Z has no samples"), err::toString);
    Path none = directory.resolve("none");
    assertEquals(2, Ran.command("audit", "--data", none.toString()).code());
    assertFalse(Files.exists(none));
  }

  /** The exit code; what was printed is added to {@code out} and {@code err}. */
  private int run(String command, String... arguments) {
    Ran ran = Ran.command(List.of(command, "--data", directory.toString()), arguments);
    out.append(ran.out());
    err.append(ran.err());
    return ran.code();
  }

  private void change(String sql) throws Exception {
    String url = "jdbc:sqlite:" + directory.resolve(SqliteStore.FILE_NAME);
    try (var connection = DriverManager.getConnection(url);
        var statement = connection.createStatement()) {
      assertTrue(statement.executeUpdate(sql) > 0);
    }
  }

  private static List<CSVRecord> parse(Path csv) throws Exception {
    return parse(csv, CSVFormat.RFC4180.builder());
  }

  private static List<CSVRecord> parse(Path csv, CSVFormat.Builder format) throws Exception {
    try (Reader reader = Files.newBufferedReader(csv)) {
      return format
          .setHeader()
          .setSkipHeaderRecord(true)
          .setCommentMarker('#')
          .get()
          .parse(reader)
          .getRecords();
    }
  }
}
