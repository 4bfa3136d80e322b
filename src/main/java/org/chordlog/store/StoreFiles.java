package org.chordlog.store;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/**
 * The place where a store keeps its data, as a whole: copied, put back, checked. Nothing here needs
 * an open {@link Store}; {@link #backup} and {@link #audit} also work while a service writes to it.
 */
public interface StoreFiles {
  /** Whether a store was ever opened here. */
  boolean exist();

  /**
   * Writes a checked copy of everything committed so far. Throws {@link
   * org.chordlog.measure.BadInput} when the target exists or can't be written, {@link
   * StoreException} when the copy turns out to be damaged.
   */
  void backup(Path target);

  /** When {@link #backup} was last done, UTC microseconds; empty where that is not known. */
  Optional<Long> lastBackupMicros();

  /**
   * Keeps the key that signs the seal's checkpoints in that file outside of this place from now on,
   * for every program that opens it. Throws {@link org.chordlog.measure.BadInput} where the file
   * can't be used.
   */
  void sealKeyAt(Path key);

  /**
   * Puts a backup in place of what is here; nothing is deleted. Throws {@link
   * org.chordlog.measure.BadInput} when the backup is damaged, empty or is not a store of Chordlog,
   * or while a service uses this place.
   */
  Restored restore(Path backup);

  /**
   * What a restore did: the folder into which the former data was moved, if there was any, and
   * whether the backup's contents agreed with its checksum (false: it has none).
   */
  record Restored(Optional<Path> setAside, boolean verified) {}

  /** Reads everything that is stored; one sentence for each fault found, none when all is well. */
  List<String> audit();

  /**
   * Follows the chain of hashes over the records, from the first to the newest, with the signed
   * checkpoints and what is known from elsewhere. Part of {@link #audit} with nothing known.
   */
  SealReport auditSeal(SealExpected expected);
}
