package org.chordlog.forward;

import java.sql.SQLException;
import org.chordlog.measure.BadInput;
import org.chordlog.store.postgres.TlsProblem;
import org.jspecify.annotations.Nullable;

/**
 * Why nothing can be delivered, in a sentence; {@code needsPerson}: waiting alone will not mend it.
 */
record ForwardProblem(String sentence, boolean needsPerson) {
  private static final TlsProblem TLS = new TlsProblem("trustedCertificates");
  private static final String READ_ONLY =
      "the plant's database takes no changes now (it is read-only)";

  /** Refused by this side, in its own words. */
  static final class Refused extends RuntimeException {
    private static final long serialVersionUID = 1;

    Refused(String sentence) {
      super(sentence);
    }
  }

  static ForwardProblem of(Exception e) {
    if (e instanceof Refused refused) {
      return new ForwardProblem(String.valueOf(refused.getMessage()), true);
    }
    if (e instanceof BadInput bad) {
      return new ForwardProblem(String.valueOf(bad.getMessage()), true);
    }
    return e instanceof SQLException sql ? of(sql) : later(String.valueOf(e.getMessage()));
  }

  private static ForwardProblem of(SQLException e) {
    return TLS.of(e).map(ForwardProblem::person).orElseGet(() -> byState(e));
  }

  /** SQLSTATE: PostgreSQL's documentation, appendix A. */
  private static ForwardProblem byState(SQLException e) {
    if (String.valueOf(e.getMessage()).contains("targetServerType")) {
      return later(READ_ONLY + ", or only standbys answer");
    }
    String state = String.valueOf(e.getSQLState());
    return switch (state) {
      case "53100" -> later("the disk of the plant's database is full");
      case "25006" -> later(READ_ONLY);
      case "57P01", "57P02", "57P03" -> later("the plant's database is stopping or starting");
      case "57014", "25P03" -> later("the plant's database is too slow: it did not answer in time");
      case "53300", "53200", "53400" -> later("the plant's database has too much to do now");
      case "28000", "28P01" -> person(notLetIn(firstLine(e)));
      case "42501" ->
          person("the plant's database does not let this user deliver: " + firstLine(e));
      case "3D000" -> person("there is no such database at the plant: " + firstLine(e));
      case "3F000", "42P01", "42703", "42883" ->
          person(
              "the plant's database has an older layout than this program, or none: update the plant"
                  + " first ("
                  + firstLine(e)
                  + ")");
      default ->
          state.startsWith("08")
              ? later("the plant's database can't be reached: " + firstLine(e))
              : later("the plant's database refused a batch: " + firstLine(e) + " [" + state + "]");
    };
  }

  /** Rules of pg_hba.conf are called so in every language of the server's messages. */
  private static String notLetIn(String said) {
    return said.contains("pg_hba.conf")
        ? "the plant's database lets this user in neither from here nor without TLS by its"
            + " pg_hba.conf; TLS to this computer itself needs trustedCertificates in plant.yaml"
        : "the plant's database refuses the user or the password in plant.yaml";
  }

  private static ForwardProblem later(String sentence) {
    return new ForwardProblem(sentence, false);
  }

  private static ForwardProblem person(String sentence) {
    return new ForwardProblem(sentence, true);
  }

  private static String firstLine(SQLException e) {
    @Nullable String message = e.getMessage();
    String line = message == null ? e.toString() : message.lines().findFirst().orElse("");
    return line.replaceFirst("^(FATAL|ERROR|FEHLER): +", "").strip();
  }
}
