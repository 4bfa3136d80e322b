package org.chordlog.store.sqlite;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.security.GeneralSecurityException;
import java.util.List;
import org.chordlog.store.MeasuringPart;
import org.chordlog.store.sql.Hashes;
import org.chordlog.store.sql.Now;

/** The file of signed checkpoints beside the database; lines are only ever added. */
record SealFile(Path database) {
  static final String FILE_NAME = "seal-checkpoints.txt";

  /** More than two lines. */
  private static final int TAIL_BYTES = 4_096;

  static final String NO_LINE = "0".repeat(2 * Hashes.BYTES);

  Path path() {
    return database.resolveSibling(FILE_NAME);
  }

  List<String> lines() throws IOException {
    return Files.exists(path())
        ? Files.readString(path(), StandardCharsets.ISO_8859_1).lines().toList()
        : List.of();
  }

  void add(SealCheckpoint.Kind kind, String uuid, SealCheckpoint.Tip tip) throws IOException {
    OwnFiles.create(path());
    String tail = tail();
    List<String> last = tail.lines().toList();
    String before = last.isEmpty() ? NO_LINE : SealCheckpoint.hash(last.get(last.size() - 1));
    SealCheckpoint.Made made =
        new SealCheckpoint.Made(Now.micros(), MeasuringPart.version(), MeasuringPart.sha256());
    try {
      String line = SealCheckpoint.sign(kind, uuid, tip, made, before, SealKey.of(database)).line();
      append((tail.isEmpty() || tail.endsWith("\n") ? "" : "\n") + line + "\n");
    } catch (GeneralSecurityException e) {
      throw new IOException("the checkpoint can't be signed", e);
    }
  }

  /** At least the last line; a line that a power cut left unfinished stays as it is. */
  private String tail() throws IOException {
    try (FileChannel channel = FileChannel.open(path())) {
      channel.position(Math.max(0, channel.size() - TAIL_BYTES));
      return new String(
          Channels.newInputStream(channel).readAllBytes(), StandardCharsets.ISO_8859_1);
    }
  }

  private void append(String text) throws IOException {
    try (FileChannel channel = FileChannel.open(path(), StandardOpenOption.APPEND)) {
      channel.write(ByteBuffer.wrap(text.getBytes(StandardCharsets.US_ASCII)));
      channel.force(true);
    }
  }
}
