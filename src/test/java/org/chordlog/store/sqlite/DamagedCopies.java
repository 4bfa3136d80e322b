package org.chordlog.store.sqlite;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.chordlog.measure.BadInput;
import org.chordlog.store.StoreException;
import org.chordlog.store.sql.Sql;

/**
 * Copies of a data directory as a kill leaves it, with a bit flipped or the journal cut: each is
 * started and audited, and is found, or has the same data as the sound one.
 *
 * <pre>java … DamagedCopies 200 50 1     flips, cuts, seed</pre>
 */
final class DamagedCopies {
  /** What came of a damaged copy. */
  enum Outcome {
    START_REFUSED,
    SAID,
    EQUAL_DATA,
    /** Data differ, and nothing says so. */
    UNSAID
  }

  private static final List<String> JOURNALLED =
      List.of(SqliteStore.FILE_NAME, SqliteStore.FILE_NAME + "-wal");

  private final Path sound;
  private final Path copy;
  private final Random random;
  private final Map<String, List<String>> soundData;
  final Map<Outcome, Integer> counts = new EnumMap<>(Outcome.class);
  final List<String> unsaid = new ArrayList<>();
  final Map<String, Integer> reasons = new TreeMap<>();

  /** {@code sound}: as a kill leaves it; {@code copy}: where damaged ones are made in turn. */
  DamagedCopies(Path sound, Path copy, long seed) throws Exception {
    this.sound = sound;
    this.copy = copy;
    random = new Random(seed);
    fresh();
    try (SqliteStore started = SqliteStore.open(copy)) {
      soundData = data(started);
    }
    fresh();
    if (outcome("nothing") != Outcome.EQUAL_DATA) {
      throw new IllegalStateException("the sound copy is said to be damaged");
    }
  }

  private void fresh() throws IOException {
    Files.createDirectories(copy);
    try (Stream<Path> old = Files.walk(copy)) {
      for (Path each : old.sorted(Comparator.reverseOrder()).toList()) {
        Files.delete(each);
      }
    }
    Files.createDirectories(copy);
    try (Stream<Path> files = Files.list(sound)) {
      for (Path each : files.filter(Files::isRegularFile).toList()) {
        Files.copy(each, copy.resolve(each.getFileName()));
      }
    }
  }

  /** Of the file of that number: 0 the database, 1 its journal. */
  void flip(int number) throws Exception {
    fresh();
    Path file = copy.resolve(JOURNALLED.get(number));
    byte[] bytes = Files.readAllBytes(file);
    int place = random.nextInt(bytes.length);
    bytes[place] ^= (byte) (1 << random.nextInt(Byte.SIZE));
    Files.write(file, bytes);
    judge("a bit of byte " + place + " of " + file.getFileName());
  }

  void cut() throws Exception {
    fresh();
    Path journal = copy.resolve(JOURNALLED.get(1));
    long length = (long) (random.nextDouble() * Files.size(journal));
    try (FileChannel channel = FileChannel.open(journal, StandardOpenOption.WRITE)) {
      channel.truncate(length);
    }
    judge("journal cut to " + length);
  }

  private void judge(String what) {
    Outcome outcome = outcome(what);
    counts.merge(outcome, 1, Integer::sum);
  }

  private Outcome outcome(String what) {
    try (SqliteStore started = SqliteStore.open(copy)) {
      Map<String, List<String>> now = data(started);
      List<String> said = new ArrayList<>(started.health().warnings());
      said.addAll(new SqliteFiles(copy).audit());
      if (!said.isEmpty()) {
        reasons.merge(said.get(0).replaceAll("[0-9a-f]{4,}|\\d+", "#"), 1, Integer::sum);
        return Outcome.SAID;
      }
      if (now.equals(soundData)) {
        return Outcome.EQUAL_DATA;
      }
      unsaid.add(what + ": " + differing(now));
      return Outcome.UNSAID;
    } catch (BadInput | StoreException e) {
      return Outcome.START_REFUSED;
    }
  }

  private String differing(Map<String, List<String>> now) {
    StringBuilder text = new StringBuilder();
    soundData.forEach(
        (table, rows) -> {
          List<String> here = now.getOrDefault(table, List.of());
          for (int i = 0; i < Math.max(rows.size(), here.size()); i++) {
            String before = i < rows.size() ? rows.get(i) : "none";
            String after = i < here.size() ? here.get(i) : "none";
            if (!before.equals(after)) {
              text.append(table).append(": ").append(before).append(" -> ").append(after);
              return;
            }
          }
        });
    return text.substring(0, Math.min(400, text.length()));
  }

  /**
   * What is recorded, by table; a start adds its own run, session of checkpoints and the like. The
   * feed for a plant holds random numbers; that it names every record is part of the audit.
   */
  private static Map<String, List<String>> data(SqliteStore store) {
    Map<String, List<String>> data = new TreeMap<>();
    store
        .database()
        .read(
            connection -> {
              for (String table : tables(connection)) {
                data.put(table, rows(connection, table));
              }
              return true;
            });
    data.remove("run");
    data.remove("change_feed");
    data.getOrDefault("checkpoint", new ArrayList<>())
        .removeIf(row -> row.contains("/" + ServiceClaim.OWNER + " "));
    return data;
  }

  private static List<String> tables(Connection connection) throws SQLException {
    return Sql.list(
        connection,
        "SELECT name FROM sqlite_master WHERE type = 'table' AND name NOT LIKE 'sqlite_%'",
        row -> row.getString(1));
  }

  private static List<String> rows(Connection connection, String table) throws SQLException {
    return Sql.list(connection, "SELECT * FROM " + table + " ORDER BY 1, 2", DamagedCopies::row);
  }

  private static String row(ResultSet row) throws SQLException {
    StringBuilder text = new StringBuilder();
    for (int i = 1; i <= row.getMetaData().getColumnCount(); i++) {
      byte[] bytes = row.getBytes(i);
      text.append(bytes == null ? "null" : Arrays.hashCode(bytes) + "/" + row.getString(i));
      text.append(' ');
    }
    return text.toString();
  }

  /** Database and journal of a store that is open, as a kill at this moment would leave them. */
  static void asKilled(SqliteStore open, Path from, Path to) throws IOException {
    if (open.readings().lastId() == 0) {
      throw new IllegalStateException("nothing is recorded");
    }
    Files.createDirectories(to);
    try (Stream<Path> files = Files.list(from)) {
      for (Path each : files.filter(Files::isRegularFile).toList()) {
        String name = String.valueOf(each.getFileName());
        if (!name.endsWith("-shm") && !name.contains("lock")) {
          Files.copy(each, to.resolve(name));
        }
      }
    }
  }

  /**
   * A store with rows in every sealed table and some others, as a kill leaves it: some of it in the
   * database only, the newest in the journal.
   */
  static Path killed(Path folder) throws Exception {
    Path data = folder.resolve("data");
    Sealed made = Sealed.in(data);
    made.goOn(200);
    Path killed = folder.resolve("killed");
    try (SqliteStore store = SqliteStore.open(data)) {
      int last = (int) store.readings().lastId();
      made.append(store, last + 1, last + 3, store.readings().find(1).orElseThrow());
      asKilled(store, data, killed);
    }
    return killed;
  }

  /** Three of four flips in the database, the others in its journal. */
  void flips(int count) throws Exception {
    for (int i = 0; i < count; i++) {
      flip(i % 4 == 3 ? 1 : 0);
    }
  }

  void cuts(int count) throws Exception {
    for (int i = 0; i < count; i++) {
      cut();
    }
  }

  public static void main(String[] arguments) throws Exception {
    long seed = Long.parseLong(arguments[2]);
    Path folder = Files.createTempDirectory("damaged");
    Path killed = killed(folder);
    DamagedCopies flipped = new DamagedCopies(killed, folder.resolve("copy"), seed);
    flipped.flips(Integer.parseInt(arguments[0]));
    flipped.tell("flipped bits");
    DamagedCopies cut = new DamagedCopies(killed, folder.resolve("copy"), seed);
    cut.cuts(Integer.parseInt(arguments[1]));
    cut.tell("cut journals");
  }

  private void tell(String what) {
    System.out.println(what + ": " + counts);
    reasons.forEach((reason, times) -> System.out.println("  " + times + " x " + reason));
    unsaid.forEach(each -> System.out.println("  unsaid: " + each));
  }
}
