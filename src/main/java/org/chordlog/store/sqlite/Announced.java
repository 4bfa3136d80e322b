package org.chordlog.store.sqlite;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.UUID;
import java.util.stream.Stream;
import org.chordlog.store.sql.Sql;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The newest ids that anyone may have seen, in a file of its own beside the database. It is written
 * after each commit and before the acknowledgement, so the database is never behind it, unless the
 * database was replaced by an older file or its journal was cut: then this says so. Belongs to
 * whoever opens the database and then to the writer's thread.
 */
final class Announced implements AutoCloseable {
  static final String FILE_NAME = "announced";
  private static final String MISSING = "missing-records-";
  private static final int EPOCH = 8;
  private static final Logger LOG = LoggerFactory.getLogger(Announced.class);

  /** Newest ids of readings, changes, events and exclusions. */
  record Ids(long readings, long changes, long events, long exclusions) {
    private static final String SELECT =
        "SELECT coalesce((SELECT max(id) FROM reading), 0), coalesce((SELECT max(id) FROM change),"
            + " 0), coalesce((SELECT max(id) FROM job_event), 0), coalesce((SELECT max(id) FROM"
            + " exclusion), 0)";

    static Ids of(Connection connection) throws SQLException {
      return Sql.first(
              connection,
              SELECT,
              row -> new Ids(row.getLong(1), row.getLong(2), row.getLong(3), row.getLong(4)))
          .orElseThrow();
    }

    /** In words, what is here beyond the other; empty where nothing is. */
    String beyond(Ids other) {
      List<String> words = new ArrayList<>();
      add(words, "readings", readings, other.readings);
      add(words, "changes", changes, other.changes);
      add(words, "events", events, other.events);
      add(words, "exclusions", exclusions, other.exclusions);
      return String.join(", ", words);
    }

    private static void add(List<String> words, String what, long announced, long here) {
      if (announced > here) {
        words.add("%s %s to %s".formatted(what, here + 1, announced));
      }
    }
  }

  /** What the file says. */
  private record Line(String epoch, Ids ids) {
    static Line read(String text) {
      String[] words = text.strip().split(" ", -1);
      return new Line(
          words[3],
          new Ids(
              Long.parseLong(words[4]),
              Long.parseLong(words[5]),
              Long.parseLong(words[6]),
              Long.parseLong(words[7])));
    }
  }

  private final FileChannel channel;
  private final String epoch;
  private Ids last;

  private Announced(FileChannel channel, String epoch, Ids last) {
    this.channel = channel;
    this.epoch = epoch;
    this.last = last;
  }

  /**
   * Compares what was announced with what is there, and leaves a note where records are missing.
   */
  static Announced open(Path database, Connection connection) throws SQLException {
    Ids here = Ids.of(connection);
    @Nullable Line before = read(database);
    String gone = before == null ? "" : before.ids().beyond(here);
    if (!gone.isEmpty()) {
      note(database, gone);
    }
    String epoch = before == null || !gone.isEmpty() ? fresh() : before.epoch();
    try {
      Path file = database.resolveSibling(FILE_NAME);
      OwnFiles.create(file);
      FileChannel channel =
          FileChannel.open(file, StandardOpenOption.CREATE, StandardOpenOption.WRITE);
      Announced made = new Announced(channel, epoch, here);
      made.begin();
      return made;
    } catch (IOException e) {
      throw new UncheckedIOException("the file of announced records can't be written: " + e, e);
    }
  }

  private static String fresh() {
    return UUID.randomUUID().toString().substring(0, EPOCH);
  }

  private static @Nullable Line read(Path database) {
    Path file = database.resolveSibling(FILE_NAME);
    try {
      return Files.exists(file) ? Line.read(Files.readString(file)) : null;
    } catch (IOException | RuntimeException e) {
      LOG.atWarn().setCause(e).log("the file of announced records is unreadable and begun anew");
      return null;
    }
  }

  /** Another database takes the place of this one on purpose: nothing is missing then. */
  static void forget(Path database) throws IOException {
    Files.deleteIfExists(database.resolveSibling(FILE_NAME));
  }

  private static void note(Path database, String gone) {
    Path note = database.resolveSibling(MISSING + SyncedFiles.now() + ".txt");
    String text = "announced records are missing from the database: " + gone;
    LOG.atError().addKeyValue("note", note).log(text);
    try {
      OwnFiles.create(note);
      Files.writeString(note, text + "\n");
      SyncedFiles.sync(note);
    } catch (IOException e) {
      throw new UncheckedIOException("the note of missing records can't be written: " + e, e);
    }
  }

  /** One sentence for each note of missing records that is still beside the file. */
  static List<String> warnings(Path database) {
    try (Stream<Path> entries = Files.list(database.resolveSibling("."))) {
      return entries
          .filter(entry -> String.valueOf(entry.getFileName()).startsWith(MISSING))
          .sorted()
          .map(Announced::warning)
          .toList();
    } catch (IOException e) {
      return List.of("the data directory can't be listed: " + e);
    }
  }

  private static String warning(Path note) {
    try {
      return Files.readString(note).strip()
          + " (its journal was cut, or it is an older file): restore a backup that has them, or"
          + " move "
          + note.getFileName()
          + " away";
    } catch (IOException e) {
      return "a note of missing records can't be read: " + e;
    }
  }

  /** What the file says that the database lacks, in words; for a look that changes nothing. */
  static String missing(Path database, Connection connection) throws SQLException {
    @Nullable Line before = read(database);
    return before == null ? "" : before.ids().beyond(Ids.of(connection));
  }

  /** Changes whenever ids may begin anew: with another database, or one that lost records. */
  static String epoch(Path database) {
    @Nullable Line line = read(database);
    return line == null ? "0" : line.epoch();
  }

  /** After a commit, before anyone is told of it. */
  void committed(Ids now) {
    if (!now.equals(last)) {
      try {
        write(now);
        last = now;
      } catch (IOException e) {
        LOG.atWarn().setCause(e).log("the file of announced records was not written");
      }
    }
  }

  /** A disk that is full does not keep the service from its start. */
  private void begin() {
    try {
      write(last);
      channel.force(true);
    } catch (IOException e) {
      LOG.atWarn().setCause(e).log("the file of announced records was not written");
    }
  }

  private void write(Ids ids) throws IOException {
    String line =
        String.format(
            Locale.ROOT,
            "chordlog announced 1 %s %019d %019d %019d %019d\n",
            epoch,
            ids.readings(),
            ids.changes(),
            ids.events(),
            ids.exclusions());
    channel.write(ByteBuffer.wrap(line.getBytes(StandardCharsets.US_ASCII)), 0);
  }

  @Override
  public void close() {
    try {
      channel.force(true);
      channel.close();
    } catch (IOException e) {
      LOG.atWarn().setCause(e).log("the file of announced records did not close");
    }
  }
}
