package org.chordlog.store.postgres;

import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Locale;
import java.util.regex.Pattern;
import org.chordlog.measure.BadInput;
import org.chordlog.store.PlantAddress;
import org.chordlog.store.PlantAdmin;
import org.chordlog.store.StoreException;
import org.chordlog.store.sql.Sql;

/** Creates the schema, and logins that may do as little as they need. */
public record PostgresPlantAdmin(PlantAddress address) implements PlantAdmin {
  private static final Pattern NAME = Pattern.compile("[A-Za-z0-9][A-Za-z0-9 ._-]{0,39}");
  private static final String EDGE = "chordlog_edge";
  private static final String PLANT = "chordlog_plant";
  private static final int LEAST_PASSWORD = 12;

  @Override
  public int create() {
    try (Connection connection =
        PlantConnections.open(address, "chordlog plant create", PlantConnections.Limits.SET_UP)) {
      PlantSchema.migrate(connection);
      return PlantSchema.VERSION;
    } catch (SQLException e) {
      throw new StoreException("not created: " + PostgresFailures.sentence(e), e);
    }
  }

  @Override
  public String addEdge(String name, String site, String password) {
    String login = login("edge", name);
    inOneCommit(
        connection -> {
          refuseTaken(connection, name);
          makeLogin(connection, login, password, EDGE);
          return Sql.update(
              connection,
              "INSERT INTO plant.login (name, edge_name, site) VALUES (?, ?, ?)",
              login,
              name,
              site);
        });
    return login;
  }

  private static void refuseTaken(Connection connection, String name) throws SQLException {
    String taken =
        "SELECT (SELECT count(*) FROM plant.login WHERE edge_name = ?)"
            + " + (SELECT count(*) FROM plant.edge WHERE name = ?)";
    if (Sql.number(connection, taken, name, name) > 0) {
      throw new BadInput("name", name, "is taken", "a name that no workshop computer has here");
    }
  }

  @Override
  public String addReader(String name, String password) {
    String login = login("plant", name);
    inOneCommit(
        connection -> {
          makeLogin(connection, login, password, PLANT);
          return true;
        });
    return login;
  }

  /** Lower case, so that it needs no quotes at PostgreSQL's own programs. */
  private static String login(String kind, String name) {
    if (!NAME.matcher(name).matches()) {
      throw new BadInput(
          "name",
          "'" + name + "'",
          "can't be the name of a login",
          "up to 40 letters, digits, blanks and . _ -, of which the first is a letter or digit");
    }
    return "chordlog_" + kind + "_" + name.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]", "_");
  }

  private static void makeLogin(Connection connection, String login, String password, String role)
      throws SQLException {
    if (password.length() < LEAST_PASSWORD) {
      throw new BadInput(
          "password", "", "is too short", "at least " + LEAST_PASSWORD + " characters");
    }
    if (Sql.number(connection, "SELECT count(*) FROM pg_roles WHERE rolname = ?", login) > 0) {
      throw new BadInput("name", login, "is a login already", "a name of its own on this server");
    }
    try (Statement statement = connection.createStatement()) {
      // neither takes parameters
      statement.execute(
          "CREATE ROLE %s LOGIN PASSWORD %s IN ROLE %s CONNECTION LIMIT 20"
              .formatted(
                  statement.enquoteIdentifier(login, true),
                  statement.enquoteLiteral(password),
                  role));
    }
  }

  private void inOneCommit(Sql.Body<?> body) {
    try (Connection connection = PlantConnections.open(address, "chordlog plant")) {
      PlantSchema.require(connection);
      connection.setAutoCommit(false);
      body.run(connection);
      connection.commit(); // closing without it rolls back
    } catch (SQLException e) {
      throw new StoreException("not done: " + PostgresFailures.sentence(e), e);
    }
  }
}
