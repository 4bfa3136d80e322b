package org.chordlog.store.sql;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Change;
import org.chordlog.store.Accounts;

record SqlAccounts(Database database) implements Accounts {
  @Override
  public List<Person> people() {
    return database.read(
        connection ->
            Sql.list(
                connection,
                "SELECT * FROM account ORDER BY lower(name), name",
                SqlAccounts::person));
  }

  @Override
  public Person add(Person person, Change change) {
    return database.write(
        connection -> {
          requireFree(connection, person);
          long id =
              Sql.insert(
                  connection,
                  "INSERT INTO account (name, roles, disabled, password, pin, badge, code,"
                      + " code_until_micros, identity) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)",
                  values(person));
          SqlChanges.insert(connection, change);
          return of(connection, id);
        });
  }

  @Override
  public Person change(Person person, Change change) {
    return database.write(
        connection -> {
          requireFree(connection, person);
          int unused =
              Sql.update(
                  connection,
                  "UPDATE account SET name = ?, roles = ?, disabled = ?, password = ?, pin = ?,"
                      + " badge = ?, code = ?, code_until_micros = ?, identity = ? WHERE id = "
                      + person.id(),
                  values(person));
          SqlChanges.insert(connection, change);
          return of(connection, person.id());
        });
  }

  private static Object[] values(Person person) {
    Secrets secrets = person.secrets();
    return new Object[] {
      person.name(),
      joined(person.roles()),
      person.disabled() ? 1 : 0,
      secrets.password(),
      secrets.pin(),
      secrets.badge(),
      secrets.code(),
      secrets.codeUntilMicros(),
      secrets.identity()
    };
  }

  private static void requireFree(Connection connection, Person person) throws SQLException {
    String others = "SELECT count(*) FROM account WHERE id <> " + person.id() + " AND ";
    if (Sql.number(connection, others + "lower(name) = ?", folded(person.name())) > 0) {
      throw new BadInput("name", person.name(), "is taken", "a name that no account has");
    }
    String badge = person.secrets().badge();
    if (!badge.isEmpty() && Sql.number(connection, others + "badge = ?", badge) > 0) {
      throw new BadInput("badge", "", "belongs to another account", "a badge of one person");
    }
  }

  private static Person of(Connection connection, long id) throws SQLException {
    return Sql.first(connection, "SELECT * FROM account WHERE id = ?", SqlAccounts::person, id)
        .orElseThrow(
            () -> new BadInput("account", id, "does not exist", "the number of an account"));
  }

  private static Person person(ResultSet row) throws SQLException {
    return new Person(
        row.getLong("id"),
        row.getString("name"),
        parted(row.getString("roles")),
        row.getInt("disabled") == 1,
        new Secrets(
            row.getString("password"),
            row.getString("pin"),
            row.getString("badge"),
            row.getString("code"),
            row.getLong("code_until_micros"),
            row.getString("identity")));
  }

  /** Without difference of case among A to Z, as the databases compare. */
  private static String folded(String name) {
    return name.chars()
        .map(each -> each >= 'A' && each <= 'Z' ? each + 'a' - 'A' : each)
        .collect(StringBuilder::new, StringBuilder::appendCodePoint, StringBuilder::append)
        .toString();
  }

  private static String joined(Set<String> words) {
    return words.stream().sorted().collect(Collectors.joining(" "));
  }

  private static Set<String> parted(String words) {
    return Arrays.stream(words.split(" ", -1))
        .filter(each -> !each.isEmpty())
        .collect(Collectors.toSet());
  }

  @Override
  public List<Token> tokens() {
    return database.read(
        connection ->
            Sql.list(
                connection,
                "SELECT * FROM access_token ORDER BY lower(name), name",
                SqlAccounts::token));
  }

  @Override
  public Token add(Token token, Change change) {
    return database.write(
        connection -> {
          String taken = "SELECT count(*) FROM access_token WHERE lower(name) = ?";
          if (Sql.number(connection, taken, folded(token.name())) > 0) {
            throw new BadInput("name", token.name(), "is taken", "a name that no token had");
          }
          long id =
              Sql.insert(
                  connection,
                  "INSERT INTO access_token (name, secret, rights, until_micros, revoked)"
                      + " VALUES (?, ?, ?, ?, 0)",
                  token.name(),
                  token.secret(),
                  joined(token.rights()),
                  token.untilMicros());
          SqlChanges.insert(connection, change);
          return Sql.first(
                  connection, "SELECT * FROM access_token WHERE id = ?", SqlAccounts::token, id)
              .orElseThrow();
        });
  }

  private static Token token(ResultSet row) throws SQLException {
    return new Token(
        row.getLong("id"),
        row.getString("name"),
        row.getString("secret"),
        parted(row.getString("rights")),
        row.getLong("until_micros"),
        row.getInt("revoked") == 1);
  }

  @Override
  public void revoke(long tokenId, Change change) {
    var unused =
        database.write(
            connection -> {
              String update = "UPDATE access_token SET revoked = 1 WHERE id = ?";
              if (Sql.update(connection, update, tokenId) == 0) {
                throw new BadInput("token", tokenId, "does not exist", "the number of a token");
              }
              return SqlChanges.insert(connection, change);
            });
  }

  @Override
  public List<Session> sessions() {
    return database.read(
        connection ->
            Sql.list(
                connection,
                "SELECT * FROM session",
                row ->
                    new Session(
                        row.getString("secret"),
                        row.getLong("account_id"),
                        row.getString("screen"),
                        row.getLong("began_micros"))));
  }

  @Override
  public void begin(Session session) {
    var unused = database.write(connection -> begin(connection, session));
  }

  private static int begin(Connection connection, Session session) throws SQLException {
    return Sql.update(
        connection,
        "INSERT INTO session (secret, account_id, screen, began_micros) VALUES (?, ?, ?, ?)",
        session.secret(),
        session.accountId(),
        session.screen(),
        session.beganMicros());
  }

  @Override
  public void share(Session screen, Change change) {
    var unused =
        database.write(
            connection -> {
              int begun = begin(connection, screen);
              SqlChanges.insert(connection, change);
              return begun;
            });
  }

  @Override
  public void end(String secret) {
    var unused = database.write(connection -> end(connection, secret));
  }

  private static int end(Connection connection, String secret) throws SQLException {
    return Sql.update(connection, "DELETE FROM session WHERE secret = ?", secret);
  }

  @Override
  public void endShared(String secret, Change change) {
    var unused =
        database.write(
            connection -> {
              int gone = end(connection, secret);
              if (gone > 0) {
                SqlChanges.insert(connection, change);
              }
              return gone;
            });
  }
}
