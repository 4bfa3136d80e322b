package org.chordlog.store.sqlite;

import java.sql.SQLException;
import java.util.Set;
import org.sqlite.SQLiteErrorCode;
import org.sqlite.SQLiteException;

/** What an error of the database means to the caller. */
final class Failures {
  private static final Set<SQLiteErrorCode> STORAGE =
      Set.of(
          SQLiteErrorCode.SQLITE_FULL,
          SQLiteErrorCode.SQLITE_IOERR,
          SQLiteErrorCode.SQLITE_BUSY,
          SQLiteErrorCode.SQLITE_LOCKED,
          SQLiteErrorCode.SQLITE_CORRUPT,
          SQLiteErrorCode.SQLITE_NOTADB,
          SQLiteErrorCode.SQLITE_READONLY,
          SQLiteErrorCode.SQLITE_CANTOPEN,
          SQLiteErrorCode.SQLITE_PROTOCOL,
          SQLiteErrorCode.SQLITE_NOMEM);

  private static final Set<SQLiteErrorCode> VALUES =
      Set.of(
          SQLiteErrorCode.SQLITE_CONSTRAINT,
          SQLiteErrorCode.SQLITE_MISMATCH,
          SQLiteErrorCode.SQLITE_TOOBIG);

  static final String RESTART = "start the service anew to have it moved aside";

  private Failures() {}

  /** Whether a row broke a rule of its table; any other failure may pass and is retried. */
  static boolean ofValues(SQLException e) {
    return VALUES.contains(primary(e));
  }

  /** Whether the file or disk failed, rather than the one statement. */
  static boolean ofStorage(SQLException e) {
    return STORAGE.contains(primary(e));
  }

  static boolean damaged(SQLException e) {
    SQLiteErrorCode code = primary(e);
    return code == SQLiteErrorCode.SQLITE_CORRUPT || code == SQLiteErrorCode.SQLITE_NOTADB;
  }

  static boolean locked(SQLException e) {
    SQLiteErrorCode code = primary(e);
    return code == SQLiteErrorCode.SQLITE_BUSY || code == SQLiteErrorCode.SQLITE_LOCKED;
  }

  /** Whether this user may not write the file, or beside it. */
  static boolean ofPermission(SQLException e) {
    SQLiteErrorCode code = primary(e);
    return code == SQLiteErrorCode.SQLITE_READONLY || code == SQLiteErrorCode.SQLITE_CANTOPEN;
  }

  /** One sentence for people. */
  static String sentence(SQLException e) {
    return switch (primary(e)) {
      case SQLITE_FULL -> "the disk is full: free some space";
      case SQLITE_BUSY, SQLITE_LOCKED -> "another program holds the database locked: close it";
      case SQLITE_CORRUPT, SQLITE_NOTADB -> "the database file is damaged: " + RESTART;
      case SQLITE_READONLY, SQLITE_CANTOPEN ->
          "the database file can't be written: check its permissions";
      default -> "the disk does not take writes: " + e.getMessage();
    };
  }

  private static SQLiteErrorCode primary(SQLException e) {
    return e instanceof SQLiteException sqlite
        ? SQLiteErrorCode.getErrorCode(sqlite.getResultCode().code & 0xff)
        : SQLiteErrorCode.UNKNOWN_ERROR;
  }
}
