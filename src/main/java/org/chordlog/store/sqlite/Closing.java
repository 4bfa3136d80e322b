package org.chordlog.store.sqlite;

import java.sql.SQLException;
import org.chordlog.store.StoreException;
import org.jspecify.annotations.Nullable;

/** Closes one thing after the other, also after one that failed; one thread. */
final class Closing {
  interface Step {
    void run() throws SQLException;
  }

  private @Nullable Exception first;

  void step(Step step) {
    try {
      step.run();
    } catch (SQLException | RuntimeException e) {
      note(e);
    }
  }

  private void note(Exception e) {
    if (first == null) {
      first = e;
    } else {
      first.addSuppressed(e);
    }
  }

  /** The first failure, if any, with the others in it. */
  void tell() {
    if (first != null) {
      throw first instanceof StoreException told
          ? told
          : new StoreException("the database does not close: " + first.getMessage(), first);
    }
  }
}
