package org.chordlog.harness;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.chordlog.Await;
import org.jspecify.annotations.Nullable;

/**
 * The files of a service that was killed while it measured, damaged, and {@code chordlog serve} and
 * {@code chordlog audit} started on them as processes: each damage is said, or every answer is the
 * same as of the sound files, or only that is missing of which nobody had been told.
 *
 * <pre>java … DamagedServices 70 0 0 1 [DIR]     flips, cuts, edits, seed</pre>
 *
 * <p>Each run makes files of its own, which the seed does not repeat: where a folder is given,
 * those of an unsaid damage are copied to it, with the sound ones.
 */
final class DamagedServices implements AutoCloseable {
  /** What came of a damaged copy; the first that holds. */
  enum Outcome {
    START_REFUSED,
    SAID_BY_HEALTH,
    SAID_BY_AUDIT,
    EQUAL,
    /** Only that is missing of which nobody had been told when the kill came. */
    UNTOLD_MISSING,
    UNSAID
  }

  /** Where service and audit run: the same code, in this process at a fifth of the cost. */
  enum Where {
    PROCESSES,
    HERE
  }

  /** Something that is done to the files. */
  interface Deed {
    String to(Damage files) throws Exception;
  }

  /** What a service said of its health and of its data; empty where it refused to start. */
  private record Answers(List<String> reasons, List<String> data) {}

  private static final ObjectMapper JSON = new ObjectMapper();
  private static final int STATIONS = 2;
  private static final int OLDER = 60;
  private static final int NEWEST = 8;
  private static final int SHOWN = 80;
  private static final String DAMAGED = "damaged";
  private static final String KILLED = "killed";
  private final Path folder;
  private final Rig copy;
  private final List<Long> jobs;
  private final Damage damage;
  private final Answers sound;
  final Map<Outcome, Integer> counts = new EnumMap<>(Outcome.class);
  final List<String> unsaid = new ArrayList<>();
  private String difference = "";
  private String last = "";

  DamagedServices(Path folder, long seed) throws Exception {
    this.folder = folder;
    try (Scene scene = new Scene(Files.createDirectories(folder.resolve("made")), STATIONS)) {
      scene.serve();
      scene.awaitReadings(OLDER);
      scene.stop();
      scene.serve();
      scene.awaitReadings(NEWEST);
      scene.kill();
      jobs = scene.jobs();
      copy = scene.rig.beside(Files.createDirectory(folder.resolve("copy")));
    }
    Files.createDirectories(folder.resolve(DAMAGED));
    Files.createDirectories(folder.resolve(KILLED));
    damage = new Damage(copy.data(), seed);
    fresh();
    sound = answers(Where.HERE);
  }

  private void fresh() throws IOException {
    Directories.delete(copy.data());
    copyFiles(folder.resolve("made/data"), copy.data());
  }

  private static void copyFiles(Path from, Path to) throws IOException {
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

  /** {@code audited}: also where every answer is equal, since not every column is in one. */
  void judge(int times, Where where, boolean audited, Deed deed) throws Exception {
    for (int i = 0; i < times; i++) {
      fresh();
      String what = deed.to(damage);
      Directories.delete(folder.resolve(DAMAGED));
      copyFiles(copy.data(), folder.resolve(DAMAGED));
      Outcome outcome = outcome(where, audited);
      counts.merge(outcome, 1, Integer::sum);
      last = what + ": " + outcome;
      if (outcome == Outcome.UNSAID) {
        unsaid.add(what + ": " + difference);
      }
    }
  }

  private Outcome outcome(Where where, boolean audited) throws Exception {
    Answers now = answers(where);
    if (now.data().isEmpty()) {
      return Outcome.START_REFUSED;
    }
    if (!sound.reasons().containsAll(now.reasons())) {
      return Outcome.SAID_BY_HEALTH;
    }
    if (now.data().equals(sound.data()) && !audited) {
      return Outcome.EQUAL;
    }
    differing(now);
    return audit(where, "audit", "--data", copy.data().toString()) == 1
        ? Outcome.SAID_BY_AUDIT
        : unsaid();
  }

  private static int audit(Where where, String... words) throws Exception {
    return where == Where.HERE ? Ran.command(words).code() : ServiceProcess.run(words).exitCode();
  }

  private Outcome unsaid() throws Exception {
    Path killed = folder.resolve(KILLED);
    Directories.delete(killed);
    copyFiles(folder.resolve("made/data"), killed);
    boolean untold = new Untold(killed).isAllThatIsMissing(copy.data());
    return untold ? Outcome.UNTOLD_MISSING : Outcome.UNSAID;
  }

  /** Notes the first answer that is another than of the sound files. */
  private void differing(Answers now) {
    difference = "";
    for (int i = 0; i < now.data().size() && difference.isEmpty(); i++) {
      String[] both = {sound.data().get(i), now.data().get(i)};
      difference = both[0].equals(both[1]) ? "" : around(both[0], both[1]);
    }
  }

  private static String around(String before, String now) {
    int place = Arrays.mismatch(before.toCharArray(), now.toCharArray());
    int from = Math.max(0, place - SHOWN);
    return before.substring(from, Math.min(before.length(), place + SHOWN))
        + " -> "
        + now.substring(from, Math.min(now.length(), place + SHOWN));
  }

  /** Of a service that is started on the copy, and killed when it has answered. */
  private Answers answers(Where where) throws Exception {
    try (Serving service =
        where == Where.HERE ? new ServiceHere(copy) : ServiceProcess.serveBriefly(copy)) {
      return answers(service);
    } catch (NotStarted e) {
      return new Answers(List.of(), List.of());
    }
  }

  private Answers answers(Serving service) throws Exception {
    List<String> data = new ArrayList<>();
    for (String path : paths()) {
      data.add(path + ": " + settled(service, path));
    }
    List<String> reasons = new ArrayList<>();
    for (JsonNode reason : JSON.readTree(service.get("/health").body()).get("reasons")) {
      reasons.add(reason.asText());
    }
    return new Answers(reasons, data);
  }

  /** What the page of a job asks for. */
  private List<String> paths() {
    List<String> paths = new ArrayList<>(List.of("/api/jobs", "/api/changes"));
    for (long job : jobs) {
      String path = "/api/jobs/" + job;
      paths.add(path);
      paths.add(path + "/statistics?scope=job");
      paths.add(path + "/chart-facts");
      paths.add(path + "/events");
      paths.add(path + "/readings.csv");
    }
    return paths;
  }

  /** The answer, when no reading is left to be taken into the statistics. */
  private static String settled(Serving service, String path) throws Exception {
    if (path.contains("/statistics")) {
      Await.until(() -> !service.get(path).body().matches("(?s).*\"behind\":[1-9].*"));
    }
    return service.get(path).body();
  }

  @Override
  public void close() throws IOException {
    Directories.delete(folder);
  }

  /** Tells each as it is judged, since a thousand starts take an hour. */
  public static void main(String[] arguments) throws Exception {
    Path folder = Files.createTempDirectory("damaged");
    Path evidence = arguments.length > 4 ? Path.of(arguments[4]) : null;
    try (DamagedServices services = new DamagedServices(folder, Long.parseLong(arguments[3]))) {
      services.tell("edited rows", count(arguments[2]), evidence, true, Damage::edit);
      services.tell("cut journals", count(arguments[1]), evidence, false, Damage::cut);
      services.tell("flipped bits", count(arguments[0]), evidence, false, Damage::flip);
    }
  }

  private static int count(String argument) {
    return Integer.parseInt(argument);
  }

  private void tell(String what, int times, @Nullable Path evidence, boolean audited, Deed deed)
      throws Exception {
    counts.clear();
    unsaid.clear();
    for (int i = 0; i < times; i++) {
      int before = unsaid.size();
      judge(1, Where.PROCESSES, audited, deed);
      System.out.println(last);
      if (evidence != null && unsaid.size() > before) {
        Path to = evidence.resolve(what + " " + i);
        copyFiles(folder.resolve("made/data"), to.resolve("sound"));
        copyFiles(folder.resolve(DAMAGED), to.resolve(DAMAGED));
      }
    }
    System.out.println(what + ": " + counts + " " + String.join("; ", unsaid));
  }
}
