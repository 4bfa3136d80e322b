package org.chordlog.harness;

import static org.junit.jupiter.api.Assertions.fail;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/**
 * What other programs read outlives a release: kept as a file, and a test fails when it changes. A
 * change that is meant is accepted by running the test with {@code -Dchordlog.golden=write}, which
 * writes the file; it is then committed with the change, for all to see.
 */
public final class Golden {
  private static final Path FOLDER = Path.of("src/test/resources/golden");
  private static final boolean WRITE = "write".equals(System.getProperty("chordlog.golden"));
  private static final int MOST_SHOWN = 40;
  private static final long MOST_COMPARED = 25_000_000;

  private Golden() {}

  /** Holds the text, line by line, against the file of that name. */
  public static void check(String name, String now) throws IOException {
    Path file = FOLDER.resolve(name);
    if (WRITE) {
      Files.writeString(file, now.endsWith("\n") ? now : now + "\n");
      return;
    }
    List<String> kept = Files.exists(file) ? Files.readAllLines(file) : List.of();
    List<String> changes = changes(kept, now.lines().toList());
    if (!changes.isEmpty()) {
      fail(sentence(file, changes));
    }
  }

  private static String sentence(Path file, List<String> changes) {
    return """
        %s is no longer what the program does. Programs in use read it: lines that go (-) or change
        break them, lines that come (+) don't. If this is meant, run
          mvn -o test -Dtest='*GoldenTest' -Dchordlog.golden=write
        commit the file with the change, and put what goes or changes into src/dist/CHANGELOG.md.
        %s"""
        .formatted(file, String.join("\n", changes));
  }

  /** Lines of one that the other lacks, in order, as few as can be told. */
  static List<String> changes(List<String> before, List<String> now) {
    int start = 0;
    int end = 0;
    int shorter = Math.min(before.size(), now.size());
    while (start < shorter && before.get(start).equals(now.get(start))) {
      start++;
    }
    while (end < shorter - start
        && before.get(before.size() - 1 - end).equals(now.get(now.size() - 1 - end))) {
      end++;
    }
    return between(
        before.subList(start, before.size() - end), now.subList(start, now.size() - end));
  }

  /** Of very long lists all lines. */
  private static List<String> between(List<String> before, List<String> now) {
    List<String> changes = new ArrayList<>();
    boolean all = (long) before.size() * now.size() > MOST_COMPARED;
    int[][] common = all ? new int[0][] : common(before, now);
    List<String> gone = new ArrayList<>();
    List<String> come = new ArrayList<>();
    int i = 0;
    int j = 0;
    while (i < before.size() || j < now.size()) {
      boolean both = i < before.size() && j < now.size();
      if (!all && both && before.get(i).equals(now.get(j))) {
        i++;
        j++;
        tell(changes, gone, come);
      } else if (both ? all || common[i + 1][j] >= common[i][j + 1] : i < before.size()) {
        gone.add(before.get(i++));
      } else {
        come.add(now.get(j++));
      }
    }
    tell(changes, gone, come);
    return changes;
  }

  /** How many lines both have, in order, from those places on. */
  private static int[][] common(List<String> before, List<String> now) {
    int[][] common = new int[before.size() + 1][now.size() + 1];
    for (int i = before.size() - 1; i >= 0; i--) {
      for (int j = now.size() - 1; j >= 0; j--) {
        common[i][j] =
            before.get(i).equals(now.get(j))
                ? 1 + common[i + 1][j + 1]
                : Math.max(common[i + 1][j], common[i][j + 1]);
      }
    }
    return common;
  }

  /** Of one place, which is over then. */
  private static void tell(List<String> changes, List<String> gone, List<String> come) {
    add(changes, "- ", gone);
    add(changes, "+ ", come);
    gone.clear();
    come.clear();
  }

  private static void add(List<String> changes, String sign, List<String> lines) {
    lines.stream().limit(MOST_SHOWN).map(line -> sign + line).forEach(changes::add);
    if (lines.size() > MOST_SHOWN) {
      changes.add(sign + "and " + (lines.size() - MOST_SHOWN) + " more lines");
    }
  }
}
