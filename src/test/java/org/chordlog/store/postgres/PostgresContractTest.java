package org.chordlog.store.postgres;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import javax.sql.DataSource;
import org.chordlog.store.AlertsContract;
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
import org.chordlog.store.sql.StoreAudit;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Tag;

/**
 * PostgreSQL fulfils the contract of a store: each directory of the tests is an edge in one
 * database.
 */
@Tag("slow")
final class PostgresContractTest {
  private static final StoreContract.Opener POSTGRES =
      new StoreContract.Opener() {
        private final Map<Path, String> edges = new ConcurrentHashMap<>();

        private String edge(Path directory) {
          return edges.computeIfAbsent(directory, TestPlant::edge);
        }

        private DataSource pool() {
          return TestPlant.shared().pool();
        }

        @Override
        public Store open(Path directory, StoreSettings settings) {
          return PostgresStore.written(pool(), edge(directory));
        }

        @Override
        public Store openForReading(Path directory) {
          return PostgresStore.forReading(pool(), edge(directory));
        }

        @Override
        public StoreFiles files(Path directory) {
          throw new UnsupportedOperationException("a database server has programs of its own");
        }

        @Override
        public List<String> audit(Path directory) {
          return PostgresStore.forReading(pool(), edge(directory)).database().read(StoreAudit::of);
        }
      };

  @Nested
  final class Opening extends OpeningContract {
    Opening() {
      super(POSTGRES);
    }
  }

  @Nested
  final class Readings extends ReadingsContract {
    Readings() {
      super(POSTGRES);
    }
  }

  @Nested
  final class PieceMoves extends PieceMovesContract {
    PieceMoves() {
      super(POSTGRES);
    }
  }

  @Nested
  final class ReadingPages extends ReadingPagesContract {
    ReadingPages() {
      super(POSTGRES);
    }
  }

  @Nested
  final class Jobs extends JobsContract {
    Jobs() {
      super(POSTGRES);
    }
  }

  @Nested
  final class MaterialLots extends MaterialLotsContract {
    MaterialLots() {
      super(POSTGRES);
    }
  }

  @Nested
  final class JobSearch extends JobSearchContract {
    JobSearch() {
      super(POSTGRES);
    }
  }

  @Nested
  final class Gauges extends GaugesContract {
    Gauges() {
      super(POSTGRES);
    }
  }

  @Nested
  final class Traces extends TracesContract {
    Traces() {
      super(POSTGRES);
    }
  }

  @Nested
  final class Studies extends StudiesContract {
    Studies() {
      super(POSTGRES);
    }
  }

  @Nested
  final class Alerts extends AlertsContract {
    Alerts() {
      super(POSTGRES);
    }
  }

  @Nested
  final class Outbox extends OutboxContract {
    Outbox() {
      super(POSTGRES);
    }
  }

  @Nested
  final class Logbooks extends LogbooksContract {
    Logbooks() {
      super(POSTGRES);
    }
  }

  @Nested
  final class Records extends RecordsContract {
    Records() {
      super(POSTGRES);
    }
  }
}
