package org.chordlog.store;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;

/**
 * What every store must do, whatever is behind it: the base of the contracts of its parts. A store
 * is tested by one class for each of them, which says how it is opened.
 */
public abstract class StoreContract {
  /** How the store under test is opened. */
  public interface Opener {
    Store open(Path directory, StoreSettings settings);

    Store openForReading(Path directory);

    StoreFiles files(Path directory);

    /** One sentence for each fault in what is stored. */
    default List<String> audit(Path directory) {
      return files(directory).audit();
    }
  }

  @TempDir Path directory;
  Store store;
  private final Opener opener;

  StoreContract(Opener opener) {
    this.opener = opener;
  }

  Store open(Path at, StoreSettings settings) {
    return opener.open(at, settings);
  }

  Store openForReading(Path at) {
    return opener.openForReading(at);
  }

  StoreFiles files(Path at) {
    return opener.files(at);
  }

  List<String> audit(Path at) {
    return opener.audit(at);
  }

  @BeforeEach
  void open() {
    store = open(directory, Some.KEEPING_ALL);
  }

  @AfterEach
  void close() {
    store.close();
  }

  void reopen() {
    close();
    open();
  }
}
