package org.chordlog.store.sqlite;

import java.nio.file.Path;
import org.chordlog.store.AlertsContract;
import org.chordlog.store.FeedContract;
import org.chordlog.store.FilesContract;
import org.chordlog.store.GaugesContract;
import org.chordlog.store.JobSearchContract;
import org.chordlog.store.JobsContract;
import org.chordlog.store.LogbooksContract;
import org.chordlog.store.MaterialLotsContract;
import org.chordlog.store.OpeningContract;
import org.chordlog.store.OutboxContract;
import org.chordlog.store.PieceMovesContract;
import org.chordlog.store.ReadingPagesContract;
import org.chordlog.store.ReadingsContract;
import org.chordlog.store.RecordsContract;
import org.chordlog.store.Store;
import org.chordlog.store.StoreContract;
import org.chordlog.store.StoreFiles;
import org.chordlog.store.StoreSettings;
import org.chordlog.store.StudiesContract;
import org.chordlog.store.TracesContract;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Tag;

/** SQLite fulfils the contract of a store. */
@Tag("slow")
final class SqliteContractTest {
  private static final StoreContract.Opener SQLITE =
      new StoreContract.Opener() {
        @Override
        public Store open(Path directory, StoreSettings settings) {
          return SqliteStore.open(directory, settings);
        }

        @Override
        public Store openForReading(Path directory) {
          return SqliteStore.openForReading(directory);
        }

        @Override
        public StoreFiles files(Path directory) {
          return new SqliteFiles(directory);
        }
      };

  @Nested
  final class Opening extends OpeningContract {
    Opening() {
      super(SQLITE);
    }
  }

  @Nested
  final class Feed extends FeedContract {
    Feed() {
      super(SQLITE);
    }
  }

  @Nested
  final class Directories extends FilesContract {
    Directories() {
      super(SQLITE);
    }
  }

  @Nested
  final class Readings extends ReadingsContract {
    Readings() {
      super(SQLITE);
    }
  }

  @Nested
  final class PieceMoves extends PieceMovesContract {
    PieceMoves() {
      super(SQLITE);
    }
  }

  @Nested
  final class ReadingPages extends ReadingPagesContract {
    ReadingPages() {
      super(SQLITE);
    }
  }

  @Nested
  final class Jobs extends JobsContract {
    Jobs() {
      super(SQLITE);
    }
  }

  @Nested
  final class MaterialLots extends MaterialLotsContract {
    MaterialLots() {
      super(SQLITE);
    }
  }

  @Nested
  final class JobSearch extends JobSearchContract {
    JobSearch() {
      super(SQLITE);
    }
  }

  @Nested
  final class Gauges extends GaugesContract {
    Gauges() {
      super(SQLITE);
    }
  }

  @Nested
  final class Traces extends TracesContract {
    Traces() {
      super(SQLITE);
    }
  }

  @Nested
  final class Studies extends StudiesContract {
    Studies() {
      super(SQLITE);
    }
  }

  @Nested
  final class Alerts extends AlertsContract {
    Alerts() {
      super(SQLITE);
    }
  }

  @Nested
  final class Outbox extends OutboxContract {
    Outbox() {
      super(SQLITE);
    }
  }

  @Nested
  final class Logbooks extends LogbooksContract {
    Logbooks() {
      super(SQLITE);
    }
  }

  @Nested
  final class Records extends RecordsContract {
    Records() {
      super(SQLITE);
    }
  }
}
