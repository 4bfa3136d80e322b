package org.chordlog.store.open;

import java.nio.file.Path;
import org.chordlog.store.Plant;
import org.chordlog.store.PlantAddress;
import org.chordlog.store.PlantAdmin;
import org.chordlog.store.Store;
import org.chordlog.store.StoreFiles;
import org.chordlog.store.StoreSettings;
import org.chordlog.store.postgres.PostgresPlant;
import org.chordlog.store.postgres.PostgresPlantAdmin;
import org.chordlog.store.sqlite.SqliteFiles;
import org.chordlog.store.sqlite.SqliteStore;

/** Opens stores: the only code that knows which database is behind the interfaces. */
public final class Stores {
  private Stores() {}

  /**
   * Opens or creates the store of a data directory. Throws {@link org.chordlog.measure.BadInput}
   * when the directory can't be written, is used by another process, or was written by a newer
   * version.
   */
  public static Store open(Path data, StoreSettings settings) {
    return SqliteStore.open(data, settings);
  }

  /** The same with the usual settings. */
  public static Store open(Path data) {
    return open(data, StoreSettings.USUAL);
  }

  /**
   * Opens a store for reading, also while a service writes to it; every change throws {@link
   * org.chordlog.store.StoreException}. Throws {@link org.chordlog.measure.BadInput} when the
   * directory holds no store, or one of another version.
   */
  public static Store openForReading(Path data) {
    return SqliteStore.openForReading(data);
  }

  /** Backup, restore and audit of a data directory. */
  public static StoreFiles files(Path data) {
    return new SqliteFiles(data);
  }

  /**
   * Opens the database of a plant. {@link org.chordlog.measure.BadInput} where it is none, or of
   * another version; {@link org.chordlog.store.StoreException} where it can't be reached.
   */
  public static Plant openPlant(PlantAddress address) {
    return PostgresPlant.open(address);
  }

  /** Sets up the database of a plant. */
  public static PlantAdmin plantAdmin(PlantAddress address) {
    return new PostgresPlantAdmin(address);
  }
}
