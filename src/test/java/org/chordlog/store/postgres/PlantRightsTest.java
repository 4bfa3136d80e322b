package org.chordlog.store.postgres;

import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.List;
import java.util.UUID;
import org.chordlog.harness.PostgresServer;
import org.chordlog.measure.BadInput;
import org.chordlog.store.PlantAddress;
import org.chordlog.store.PlantAdmin;
import org.chordlog.store.StoreException;
import org.chordlog.store.sql.Sql;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What logins may do and what not, by the server's own rules. */
@Tag("slow")
final class PlantRightsTest {
  private static final String PASSWORD = "an invented password";
  private static final String MINE = UUID.randomUUID().toString();
  private static final String OTHERS = UUID.randomUUID().toString();

  private static TestPlant plant;
  private static String edge;
  private static String reader;

  @BeforeAll
  static void twoEdges() throws SQLException {
    plant = TestPlant.fresh();
    PlantAdmin admin = new PostgresPlantAdmin(plant.address());
    edge = admin.addEdge("Rights A " + MINE.substring(0, 8), "Hall 1", PASSWORD);
    String other = admin.addEdge("Rights B " + MINE.substring(0, 8), "Hall 2", PASSWORD);
    reader = admin.addReader("rights " + MINE.substring(0, 8), PASSWORD);
    begin(edge, MINE);
    begin(other, OTHERS);
  }

  @AfterAll
  static void end() {
    plant.pool().close();
  }

  private static void begin(String login, String id) throws SQLException {
    try (Connection connection = as(login)) {
      register(connection, id);
      String job =
          "INSERT INTO plant.change (edge_id, incarnation, id, at_micros, made_by, what, old_value,"
              + " new_value, why) VALUES (?::uuid, 1, 1, 5, 'me', 'station A', '', '2', '')";
      assertEquals(1, Sql.update(connection, job, id));
    }
  }

  private static Connection as(String login) throws SQLException {
    PlantAddress owner = plant.address();
    return PlantConnections.open(
        new PlantAddress(owner.hosts(), owner.database(), login, () -> PASSWORD, null), "test");
  }

  private static void register(Connection connection, String id) throws SQLException {
    Sql.list(connection, "SELECT plant.register(?::uuid, 8, '0.1.0')", row -> true, id);
  }

  private static void refused(String login, String sql) throws SQLException {
    try (Connection connection = as(login)) {
      show(connection, OTHERS);
      SQLException e = assertThrows(SQLException.class, () -> Sql.update(connection, sql), sql);
      assertEquals("42501", e.getSQLState(), e::getMessage);
    }
  }

  private static void show(Connection connection, String id) throws SQLException {
    Sql.list(connection, "SELECT set_config('chordlog.edge', ?, false)", row -> true, id);
  }

  @ParameterizedTest
  @ValueSource(strings = {"plant.change", "plant.edge", "change", "identity"})
  void anEdgeSeesItsOwnRowsAlone(String table) throws SQLException {
    try (Connection connection = as(edge)) {
      show(connection, OTHERS);
      long seen = Sql.number(connection, "SELECT count(*) FROM " + table);
      assertEquals(table.startsWith("plant.") ? 1 : 0, seen);
      show(connection, MINE);
      assertEquals(1, Sql.number(connection, "SELECT count(*) FROM " + table));
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "INSERT INTO plant.run (edge_id, incarnation, id, started_micros, version) VALUES"
            + " (plant.current_edge(), 1, 7, 5, 'x')",
        "INSERT INTO plant.batch SELECT plant.current_edge(), 1, 1, 9, 9, 0, 9, '', 9, 1, 5, 5",
        "INSERT INTO plant.branch SELECT plant.current_edge(), 2, 9, 5, ''",
      })
  void anEdgeAddsNothingForAnother(String sql) throws SQLException {
    refused(edge, sql);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "UPDATE plant.change SET why = 'changed'",
        "DELETE FROM plant.change",
        "UPDATE plant.edge SET trouble = 'changed'"
      })
  void anEdgeChangesAndRemovesNothingOfAnother(String sql) throws SQLException {
    try (Connection connection = as(edge)) {
      connection.setAutoCommit(false);
      assertTrue(Sql.update(connection, sql) <= 1);
      connection.rollback();
      assertEquals(0, Sql.update(connection, sql + " WHERE edge_id = ?::uuid", OTHERS));
      connection.rollback();
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "DROP TABLE plant.reading",
        "TRUNCATE plant.reading",
        "TRUNCATE plant.change",
        "DELETE FROM plant.reading",
        "UPDATE plant.reading SET depth_nm = 0",
        "DELETE FROM plant.batch",
        "INSERT INTO plant.edge (edge_id, name) VALUES (gen_random_uuid(), 'more')",
        "UPDATE plant.edge SET name = 'other'",
        "UPDATE plant.request SET body = '{}'",
        "INSERT INTO plant.request (edge_id, kind, body, made_micros, made_by) VALUES"
            + " (plant.current_edge(), 'ACKNOWLEDGE_ALERT', '{}', 5, 'me')",
        "UPDATE plant.login SET edge_id = NULL",
        "DROP SCHEMA plant CASCADE",
        "ALTER TABLE plant.change DISABLE ROW LEVEL SECURITY",
        "CREATE TABLE plant.mine (id int)",
        "SELECT count(*) FROM plant.account",
        "SELECT count(*) FROM plant.reading_0"
      })
  void anEdgeNeitherDropsNorTruncatesNorRewritesHistory(String sql) throws SQLException {
    refused(edge, sql);
  }

  @Test
  void aLoginBelongsToTheFirstDatabaseThatUsedIt() throws SQLException {
    try (Connection connection = as(edge)) {
      assertDoesNotThrow(() -> register(connection, MINE));
      SQLException e =
          assertThrows(
              SQLException.class, () -> register(connection, UUID.randomUUID().toString()));
      assertTrue(String.valueOf(e.getMessage()).contains("needs one of its own"), e::getMessage);
    }
  }

  @Test
  void theReaderSeesAllAndChangesNothingOfAnEdge() throws SQLException {
    try (Connection connection = as(reader)) {
      show(connection, PostgresPlant.OWN);
      assertEquals(
          1, Sql.update(connection, "INSERT INTO answered_request VALUES ('key', 'request', 5)"));
      assertEquals(1, Sql.number(connection, "SELECT count(*) FROM answered_request"));
      assertEquals(2, Sql.number(connection, "SELECT count(*) FROM plant.change"));
      assertEquals(0, Sql.update(connection, "UPDATE plant.change SET why = 'changed'"));
      assertEquals(0, Sql.update(connection, "DELETE FROM plant.change"));
    }
    refused(
        reader,
        "INSERT INTO plant.change (id, at_micros, made_by, what, old_value, new_value,"
            + " why) VALUES (9, 5, 'me', 'x', '', '', '')");
    refused(reader, "DELETE FROM plant.reading");
    refused(reader, "UPDATE plant.edge SET name = 'other'");
    refused(reader, "SELECT plant.register(gen_random_uuid(), 8, '')");
    refused(reader, "TRUNCATE plant.checkpoint");
  }

  @Test
  void namesThatAreTakenAndPasswordsThatAreShortAreRefused() {
    PlantAdmin admin = new PostgresPlantAdmin(plant.address());
    String taken = "Rights A " + MINE.substring(0, 8);
    assertThrows(BadInput.class, () -> admin.addEdge(taken, "", PASSWORD));
    assertThrows(BadInput.class, () -> admin.addEdge("short " + MINE, "", PASSWORD));
    assertThrows(BadInput.class, () -> admin.addEdge("C", "", "short"));
    assertThrows(
        BadInput.class, () -> admin.addEdge("x'; DROP TABLE plant.edge; --", "", PASSWORD));
  }

  @Test
  void aWrongPasswordIsSaidInWords() {
    PlantAddress owner = plant.address();
    PlantAddress wrong =
        new PlantAddress(owner.hosts(), owner.database(), edge, () -> "wrong", null);
    StoreException e = assertThrows(StoreException.class, () -> PostgresPlant.open(wrong));
    assertTrue(
        String.valueOf(e.getMessage()).contains("refuses the user or the password"), e::getMessage);
  }

  @Test
  void aDatabaseOfAnotherVersionIsRefusedInWords() {
    TestPlant newer = TestPlant.fresh();
    PostgresServer server = PostgresServer.shared();
    server.execute(newer.database(), "UPDATE plant.version SET version = 99");
    BadInput e = assertThrows(BadInput.class, () -> PostgresPlant.open(newer.address()));
    assertTrue(e.toString().contains("made by a newer Chordlog"), e::toString);
    PlantAdmin admin = new PostgresPlantAdmin(newer.address());
    assertThrows(BadInput.class, admin::create);
    server.execute(newer.database(), "DELETE FROM plant.version");
    e = assertThrows(BadInput.class, () -> PostgresPlant.open(newer.address()));
    assertTrue(e.toString().contains("plant create"), e::toString);
    newer.pool().close();
    PlantAddress empty =
        PlantAddress.of(server.url(server.database()), PostgresServer.SUPERUSER, () -> "", null);
    e = assertThrows(BadInput.class, () -> PostgresPlant.open(empty));
    assertTrue(e.toString().contains("is not the database of a plant"), e::toString);
    assertEquals(List.of(PlantSchema.VERSION, PlantSchema.VERSION), twice(empty));
  }

  private static List<Integer> twice(PlantAddress address) {
    PlantAdmin admin = new PostgresPlantAdmin(address);
    return List.of(admin.create(), admin.create());
  }
}
