package org.chordlog.forward;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import org.chordlog.harness.PostgresServer;
import org.chordlog.store.FeedTable;
import org.chordlog.store.Store;
import org.chordlog.store.open.Stores;

/** Temporary. */
final class TestPlant {
  static String create(PostgresServer server) throws Exception {
    String database = server.database();
    Path folder = Files.createTempDirectory("columns");
    Store unused = Stores.open(folder);
    unused.close();
    StringBuilder sql = new StringBuilder(
        "CREATE SCHEMA plant; CREATE SCHEMA edge;"
        + "CREATE FUNCTION plant.now_micros() RETURNS bigint LANGUAGE sql AS $$ SELECT (extract(epoch FROM clock_timestamp()) * 1000000)::bigint $$;"
        + "CREATE TABLE plant.edge(edge_id uuid PRIMARY KEY, name text UNIQUE, site text, incarnation int NOT NULL, seen_micros bigint NOT NULL DEFAULT 0, backlog_rows bigint NOT NULL DEFAULT 0, newest_edge_micros bigint NOT NULL DEFAULT 0, trouble text NOT NULL DEFAULT '', program_version text, schema_version int, clock_ahead_micros bigint NOT NULL DEFAULT 0);"
        + "CREATE TABLE plant.branch(edge_id uuid, incarnation int, begins_after_reading_id bigint, begun_micros bigint, why text, PRIMARY KEY (edge_id, incarnation));"
        + "CREATE TABLE plant.batch(edge_id uuid, incarnation int, number bigint, last_reading_id bigint, last_revision bigint, feed_mark bigint, seal_seq bigint, seal_hash text, rows bigint, batches bigint, begun_micros bigint, received_micros bigint, PRIMARY KEY(edge_id, incarnation, number));"
        + "CREATE TABLE plant.request(id bigserial PRIMARY KEY, edge_id uuid, kind text, body jsonb, made_by text, made_micros bigint, answered_micros bigint, answer text);"
        + "CREATE FUNCTION plant.current_edge() RETURNS uuid LANGUAGE sql STABLE AS $$ SELECT current_setting('chordlog.edge')::uuid $$;"
        + "CREATE FUNCTION plant.current_incarnation() RETURNS int LANGUAGE sql STABLE AS $$ SELECT incarnation FROM plant.edge WHERE edge_id = plant.current_edge() $$;"
        + "CREATE FUNCTION plant.register(e uuid, v int, p text) RETURNS void LANGUAGE plpgsql AS $$ BEGIN INSERT INTO plant.edge(edge_id,name,site,incarnation) VALUES (e,'edge A','s',1) ON CONFLICT (edge_id) DO NOTHING; END $$;"
        + "CREATE TABLE plant.job_total(edge_id uuid, incarnation int, job_id bigint, readings bigint, first_reading_id bigint, last_reading_id bigint, PRIMARY KEY (edge_id,incarnation,job_id));");
    try (Connection c = DriverManager.getConnection("jdbc:sqlite:" + folder.resolve("chordlog.db"));
        Statement s = c.createStatement()) {
      for (FeedTable each : FeedTable.values()) {
        List<String> columns = new ArrayList<>();
        try (ResultSet r = s.executeQuery("SELECT name, type, \"notnull\" FROM pragma_table_info('" + each.table() + "')")) {
          while (r.next()) {
            columns.add('"' + r.getString(1) + "\" " + switch (r.getString(2)) {
              case "INTEGER" -> "bigint";
              case "REAL" -> "float8";
              case "BLOB" -> "bytea";
              default -> "text COLLATE \"C\"";
            } + (r.getInt(3) == 1 ? " NOT NULL" : ""));
          }
        }
        sql.append("CREATE TABLE plant.").append(each.table()).append(" (edge_id uuid, incarnation int, ")
            .append(String.join(", ", columns));
        if (each.holdsFacts()) sql.append(", feed_revision bigint NOT NULL DEFAULT 0");
        sql.append(", PRIMARY KEY (edge_id, incarnation, ").append(String.join(", ", each.key())).append("))");
        if (!each.holdsFacts()) {
          sql.append(" PARTITION BY HASH(edge_id);");
          for (int i = 0; i < 8; i++) sql.append("CREATE TABLE plant." + each.table() + "_" + i + " PARTITION OF plant." + each.table() + " FOR VALUES WITH (MODULUS 8, REMAINDER " + i + ");");
        } else sql.append(";");
        String names = String.join(", ", columns.stream().map(x -> x.split(" ", 2)[0]).toList());
        String id = each == FeedTable.PROFILE ? "reading_id" : "id";
        sql.append("CREATE VIEW edge." + each.table() + " AS SELECT " + names + " FROM plant." + each.table() + " r WHERE edge_id = plant.current_edge() AND "
          + (each.holdsFacts() ? "incarnation = plant.current_incarnation();" :
            "incarnation <= plant.current_incarnation() AND r." + id + " <= coalesce((SELECT min(b.begins_after_reading_id) FROM plant.branch b WHERE b.edge_id = r.edge_id AND b.incarnation > r.incarnation AND b.incarnation <= plant.current_incarnation()), 9223372036854775807);"));
        if (each == FeedTable.READING) sql.append("CREATE INDEX ON plant.reading (edge_id, job_id, id); CREATE INDEX ON plant.reading USING brin (wall_micros);");
      }
    } catch (SQLException e) {
      throw new IllegalStateException(e);
    }
    server.execute(database, sql.toString());
    return database;
  }
}
