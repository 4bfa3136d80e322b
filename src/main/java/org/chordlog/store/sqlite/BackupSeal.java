package org.chordlog.store.sqlite;

import java.io.IOException;
import java.io.InputStream;
import java.io.RandomAccessFile;
import java.nio.ByteBuffer;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.security.MessageDigest;
import java.util.HexFormat;
import org.chordlog.measure.BadInput;
import org.chordlog.store.sql.Hashes;

/**
 * The checksum at the end of a backup: one line with the SHA-256 of all bytes before it. SQLite
 * reads a file only as far as its header says (sqlite.org/fileformat2.html, 1.3.7), so a backup
 * with its seal is still a database.
 */
final class BackupSeal {
  private static final String WORDS = "\nChordlog backup, SHA-256 of the bytes before this line: ";
  private static final int HEX = 64;
  static final int BYTES = WORDS.length() + HEX + 1;
  private static final int CHUNK = 1 << 16;
  private static final int HEADER_BYTES = 100;
  private static final int PAGE_SIZE_AT = 16;
  private static final int PAGES_AT = 28;

  private BackupSeal() {}

  static void put(Path backup) throws IOException {
    String line = WORDS + digest(backup, Files.size(backup)) + "\n";
    Files.writeString(backup, line, StandardCharsets.US_ASCII, StandardOpenOption.APPEND);
  }

  /**
   * Whether the contents were verified; false for a file without a seal that is as long as its
   * header says. {@link BadInput} for one that does not agree with its seal or its length.
   */
  static boolean verify(Path backup) throws IOException {
    long contents = Files.size(backup) - BYTES;
    String seal = contents < 0 ? "" : tail(backup, contents);
    if (seal.startsWith(WORDS)) {
      if (!seal.equals(WORDS + digest(backup, contents) + "\n")) {
        throw new BadInput(
            "FILE", backup, "was changed or damaged: its checksum differs", "an intact backup");
      }
      return true;
    }
    if (Files.size(backup) != lengthByHeader(backup)) {
      throw new BadInput(
          "FILE", backup, "is cut off, empty or damaged at its end", "an intact backup");
    }
    return false;
  }

  /** Takes the seal off a copy that was verified. */
  static void remove(Path copy) throws IOException {
    try (FileChannel channel = FileChannel.open(copy, StandardOpenOption.WRITE)) {
      channel.truncate(channel.size() - BYTES);
    }
  }

  private static String tail(Path file, long from) throws IOException {
    try (FileChannel channel = FileChannel.open(file);
        InputStream in = Channels.newInputStream(channel.position(from))) {
      return new String(in.readAllBytes(), StandardCharsets.ISO_8859_1);
    }
  }

  private static String digest(Path file, long bytes) throws IOException {
    MessageDigest sha = Hashes.sha256();
    byte[] chunk = new byte[CHUNK];
    long left = bytes;
    try (InputStream in = Files.newInputStream(file)) {
      while (left > 0) {
        int read = in.read(chunk, 0, (int) Math.min(CHUNK, left));
        if (read < 0) {
          throw new IOException("the file became shorter while it was read");
        }
        sha.update(chunk, 0, read);
        left -= read;
      }
    }
    return HexFormat.of().formatHex(sha.digest());
  }

  /** Size of a page times number of pages; 0 where there is no header. */
  private static long lengthByHeader(Path file) throws IOException {
    try (RandomAccessFile in = new RandomAccessFile(file.toFile(), "r")) {
      if (in.length() < HEADER_BYTES) {
        return -1;
      }
      byte[] bytes = new byte[HEADER_BYTES];
      in.readFully(bytes);
      ByteBuffer header = ByteBuffer.wrap(bytes);
      int size = Short.toUnsignedInt(header.getShort(PAGE_SIZE_AT));
      return (size == 1 ? CHUNK : size) * Integer.toUnsignedLong(header.getInt(PAGES_AT));
    }
  }
}
