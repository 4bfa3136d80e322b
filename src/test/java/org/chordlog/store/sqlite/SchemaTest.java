package org.chordlog.store.sqlite;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.stream.Stream;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.CaptureMode;
import org.chordlog.measure.ClockState;
import org.chordlog.measure.Decision;
import org.chordlog.measure.Face;
import org.chordlog.measure.Incident;
import org.chordlog.measure.Job;
import org.chordlog.measure.JobEvent;
import org.chordlog.measure.LogbookEntry;
import org.chordlog.measure.Mark;
import org.chordlog.measure.Reading;
import org.chordlog.measure.ReadingKind;
import org.chordlog.measure.RollerScale;
import org.chordlog.measure.SubgroupRule;
import org.chordlog.measure.alert.AlertEvent;
import org.chordlog.measure.alert.AlertFigure;
import org.chordlog.measure.alert.AlertKind;
import org.chordlog.measure.alert.AlertState;
import org.chordlog.measure.alert.AlertSubject;
import org.chordlog.store.Kept;
import org.chordlog.store.Outbox;
import org.chordlog.store.Plant;
import org.chordlog.store.sql.Sql;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

final class SchemaTest {
  @TempDir Path directory;

  /**
   * A step that was released is frozen: databases that went through it would differ from new ones.
   * Put the change into the next step, add that to {@code Schema.STEPS}, and its sum here.
   */
  @ParameterizedTest
  @CsvSource({
    "1, 18749655c0437b2245fc109ac51046d02205b46a45a96204fadf32c805c09e4f",
  })
  void theScriptOfAReleasedStepIsNeverChanged(int version, String sha256) throws Exception {
    byte[] script =
        Sql.resource(Schema.class, "schema-" + version + ".sql").getBytes(StandardCharsets.UTF_8);
    byte[] sum = MessageDigest.getInstance("SHA-256").digest(script);
    assertEquals(sha256, HexFormat.of().formatHex(sum));
  }

  static Stream<Arguments> names() {
    return Stream.of(
        Arguments.of(CaptureMode.class, "SETTLED EXTREMUM TRIGGER PASSING"),
        Arguments.of(ClockState.class, "STEADY STEPPED BEFORE_BUILD"),
        Arguments.of(Decision.class, "CONFORMS DOES_NOT_CONFORM UNDECIDED NO_LIMITS"),
        Arguments.of(Face.class, "OUTER INNER CENTRELINE"),
        Arguments.of(
            Incident.Kind.class,
            "LINK_LOST SILENT CLOCK_STEPPED SAMPLES_DROPPED READINGS_DROPPED UNIT_CHANGED"
                + " ZERO_MOVED SETTING_CHANGED FROZEN UNREADABLE OTHER_CHANNEL PIECE_INTERRUPTED"
                + " STOOD_STILL"),
        Arguments.of(Job.State.class, "OPEN CLOSED"),
        Arguments.of(
            JobEvent.Kind.class,
            "CORRECTION MATERIAL_LOT SET_UP ZERO LIMITS_FROZEN LIMITS_RELEASED NOTE BRIDGE"),
        Arguments.of(
            LogbookEntry.Kind.class,
            "ROLLER_CHANGED BEARING_RENEWED LUBRICATED SET_STRAIGHT OTHER"),
        Arguments.of(RollerScale.Tighter.class, "HIGHER LOWER UNKNOWN"),
        Arguments.of(
            Mark.class,
            "ZERO_MISSING ZERO_STALE CALIBRATION_MISSING CALIBRATION_OVERDUE CHECK_FAILED"
                + " CLOCK_DOUBTFUL IMPORTED ZERO_MOVED ZERO_OF_OTHER_BRIDGE"
                + " ZERO_DOUBTFUL"),
        Arguments.of(ReadingKind.class, "PRODUCT MASTER CHECK"),
        Arguments.of(SubgroupRule.Kind.class, "CONSECUTIVE PIECE INDIVIDUAL"),
        Arguments.of(
            AlertKind.class,
            "ROLLER_CREEPS ROLLER_JUMPED LIMIT_AHEAD GAUGE_UNFIT ZERO_OLD CALIBRATION_DUE LINK_LOST"
                + " NETWORK_LOST READINGS_NOT_KEPT RECORD_ALTERED DISK_LOW BACKUP_OLD"
                + " CERTIFICATE_ENDS EDGE_SILENT EDGE_BEGAN_ANEW EDGE_VERSION_DIFFERS"
                + " EDGE_CLOCK_WRONG"),
        Arguments.of(
            AlertState.class,
            "NORMAL UNACKNOWLEDGED ACKNOWLEDGED RETURNED_UNACKNOWLEDGED SHELVED OUT_OF_SERVICE"),
        Arguments.of(AlertSubject.Type.class, "MACHINE STATION SERVICE EDGE"),
        Arguments.of(Outbox.Channel.class, "MAIL WEBHOOK"),
        Arguments.of(Outbox.Topic.class, "RAISED RETURNED EVENT DAILY"),
        Arguments.of(Outbox.State.class, "WAITING DELIVERED FAILED"),
        Arguments.of(
            AlertEvent.What.class,
            "RAISED AGAIN RETURNED REPLACED ACKNOWLEDGED SHELVED BACK_FROM_SHELF ASSIGNED OUT_OF_SERVICE"
                + " BACK_IN_SERVICE"),
        Arguments.of(
            AlertFigure.class,
            "PIECES SINCE_PIECE CHANGE_PER_PIECE CHANGE_PER_PIECE_LOWER CHANGE_PER_PIECE_UPPER"
                + " CHANGE CORRECTIONS TARGET_MM TOLERANCE_MM PIECES_LEFT HOURS_LEFT"
                + " PIECES_LEFT_AT_LEAST DEVIATION_MM READINGS_IN_DOUBT DAYS_LEFT HOURS MINUTES STATIONS READINGS FAULTS"
                + " FREE_BYTES HEARD_MICROS HISTORIES LAYOUTS_AHEAD MASTER_MM RECORDS SECONDS_AHEAD"));
  }

  /**
   * Databases hold these names. One that is renamed or removed needs a step that rewrites the rows;
   * a new one is added here.
   */
  @ParameterizedTest
  @MethodSource("names")
  void constantsKeepTheNamesThatDatabasesHold(Class<? extends Enum<?>> type, String names) {
    List<String> expected = List.of(names.split(" ", -1));
    assertEquals(
        expected.stream().sorted().toList(),
        Arrays.stream(type.getEnumConstants()).map(Enum::name).sorted().toList());
  }

  /** The last statement of a step fails as if the process had died: nothing of the step stays. */
  @Test
  void anInterruptedStepLeavesTheFileUsable() throws Exception {
    Path file = directory.resolve(SqliteStore.FILE_NAME);
    Reading kept;
    try (SqliteStore store = SqliteStore.open(directory)) {
      kept = store.readings().append(Kept.first(store)).join();
    }
    try (Connection connection = Connections.writer(file)) {
      Schema.Step fails =
          Schema.script("ALTER TABLE reading ADD COLUMN more TEXT; DELETE FROM reading; no sense;");
      int next = Schema.VERSION + 1;
      assertThrows(SQLException.class, () -> Schema.migrate(connection, next, step -> fails));
      assertEquals(Schema.VERSION, Schema.version(connection));
    }
    try (SqliteStore store = SqliteStore.open(directory)) {
      assertEquals(kept, store.readings().find(kept.id()).orElseThrow());
    }
  }

  /** SQLite ends the transaction by itself then; what is told is the disk, not that. */
  @Test
  void aDiskThatIsFullWhileAStepRunsIsNamed() throws Exception {
    SqliteStore.open(directory).close();
    try (Connection connection = Connections.writer(directory.resolve(SqliteStore.FILE_NAME))) {
      long pages = Sql.number(connection, "PRAGMA page_count");
      assertEquals(pages + 1, Sql.number(connection, "PRAGMA max_page_count = " + (pages + 1)));
      Schema.Step fills =
          step -> {
            Sql.run(step, "CREATE TABLE more (some BLOB)");
            Sql.run(step, "INSERT INTO more VALUES (zeroblob(100000))");
          };
      SQLException e =
          assertThrows(
              SQLException.class,
              () -> Schema.migrate(connection, Schema.VERSION + 1, next -> fills));
      assertEquals("the disk is full: free some space", Failures.sentence(e));
    }
  }

  @Test
  void anotherProgramsDatabaseIsRefusedAndLeftAlone() throws Exception {
    Path file = directory.resolve(SqliteStore.FILE_NAME);
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file)) {
      Sql.run(connection, "CREATE TABLE theirs (x)");
    }
    BadInput e = assertThrows(BadInput.class, () -> SqliteStore.open(directory));
    assertTrue(e.toString().contains("another program"), e::toString);
  }

  @Test
  void everyTableIsStrict() throws Exception {
    SqliteStore.open(directory).close();
    try (Connection connection = Connections.reader(directory.resolve(SqliteStore.FILE_NAME))) {
      assertEquals(
          List.of(),
          Sql.list(
              connection,
              "SELECT name FROM pragma_table_list WHERE strict = 0 AND name NOT LIKE 'sqlite_%'",
              row -> row.getString(1)));
    }
  }

  /** Else a plant would call each workshop computer of its own version older or newer. */
  @Test
  void aPlantKnowsTheLayoutOfThisVersion() {
    assertEquals(Schema.VERSION, Plant.LAYOUT);
  }
}
