package org.chordlog.store.sqlite;

import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import org.chordlog.measure.BadInput;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class DataLockTest {
  @TempDir Path directory;

  /** As a disk that knows no locks: a channel that is closed fails likewise. */
  @Test
  void aLockThatCannotBeTakenNamesTheDirectory() throws Exception {
    Path file = directory.resolve("chordlog.lock");
    FileChannel channel =
        FileChannel.open(file, StandardOpenOption.CREATE, StandardOpenOption.WRITE);
    channel.close();
    BadInput e = assertThrows(BadInput.class, () -> DataLock.lock(directory, channel));
    assertTrue(e.toString().contains(directory + " can't be locked"), e::toString);
  }
}
