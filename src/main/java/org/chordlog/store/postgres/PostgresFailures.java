package org.chordlog.store.postgres;

import java.net.SocketTimeoutException;
import java.sql.SQLException;
import java.sql.SQLTransientConnectionException;
import java.util.Optional;
import org.chordlog.measure.BadInput;
import org.jspecify.annotations.Nullable;

/** What an error of PostgreSQL means to the caller (documentation of version 15, appendix A). */
final class PostgresFailures {
  private static final String SLOW = "the plant's database did not answer in time";
  private static final TlsProblem TLS = new TlsProblem("--database-certificates");

  private PostgresFailures() {}

  /** Whether a row broke a rule of its table: it will be refused again. */
  static boolean ofValues(SQLException e) {
    return state(e).startsWith("23") || state(e).startsWith("22");
  }

  /** One sentence for people; no user, no password. */
  static String sentence(SQLException e) {
    return refusedHere(e).or(() -> TLS.of(e)).orElseGet(() -> byState(e));
  }

  /** In the words of who refused it, such as the file of the password. */
  private static Optional<String> refusedHere(SQLException e) {
    return e.getCause() instanceof BadInput bad
        ? Optional.of(String.valueOf(bad.getMessage()))
        : Optional.empty();
  }

  private static String byState(SQLException e) {
    if (timedOut(e)) {
      return SLOW;
    }
    if (e instanceof SQLTransientConnectionException && e.getCause() == null) {
      return "the plant's database is too slow: no connection to it was free within 3 s";
    }
    String state = state(e);
    return switch (state) {
      case "53100" -> "the disk of the plant's database is full: free some space there";
      case "25006" ->
          "the plant's database takes no writes: it is a standby, or was set to read only";
      case "42501" -> "the plant's database does not allow it: " + firstLine(e);
      case "53300" -> "the plant's database has too many connections";
      case "57014", "55P03" -> SLOW;
      case "3D000" -> "the server has no such database: run 'chordlog plant create' first";
      case "28P01", "28000" -> notLetIn(firstLine(e));
      default ->
          unreachable(state)
              ? "the plant's database can't be reached: " + firstLine(e)
              : "the plant's database failed: " + firstLine(e);
    };
  }

  /** Nothing was heard for as long as the connection allows. */
  private static boolean timedOut(@Nullable Throwable e) {
    return e != null && (e instanceof SocketTimeoutException || timedOut(e.getCause()));
  }

  private static String notLetIn(String said) {
    return said.contains("pg_hba.conf")
        ? "the plant's database lets this user in neither from here nor without TLS by its"
            + " pg_hba.conf; TLS to this computer itself needs --database-certificates"
        : "the plant's database refuses the user or the password";
  }

  /** A lost or refused connection, a server that starts or ends. */
  private static boolean unreachable(String state) {
    return state.isEmpty() || state.startsWith("08") || state.startsWith("57P");
  }

  /** Of the error or of what caused it: the pool wraps what the driver says. */
  private static String state(SQLException e) {
    String own = Optional.ofNullable(e.getSQLState()).orElse("");
    return own.isEmpty() && e.getCause() instanceof SQLException cause ? state(cause) : own;
  }

  private static String firstLine(SQLException e) {
    Throwable cause = e.getCause() instanceof SQLException inner ? inner : e;
    String said = String.valueOf(cause.getMessage()).lines().findFirst().orElse("");
    return said.contains("targetServerType")
        ? "no server among those in the URL takes writes, only standbys answer"
        : said;
  }
}
