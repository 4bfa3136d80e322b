package org.chordlog.store.sqlite;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.chordlog.Await;
import org.chordlog.harness.Children;
import org.chordlog.measure.Reading;
import org.chordlog.store.Kept;
import org.chordlog.store.Some;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.io.TempDirFactory;

/**
 * A process that writes is killed (SIGKILL) at random moments: after its first output, after some
 * hundred acknowledgements, or in between. Whatever it acknowledged is stored once and equal.
 */
@Tag("slow")
final class KillTest {
  private static final int MOST_ACKNOWLEDGED = 400;

  @TempDir(factory = TempDirFactory.Standard.class)
  Path directory;

  private final Random random = new Random(20261125);
  private final Set<Long> acknowledged = new HashSet<>();
  private Reading like;

  @BeforeEach
  void prepare() {
    try (SqliteStore store = SqliteStore.open(directory)) {
      like = Kept.first(store);
    }
  }

  @Test
  void nothingAcknowledgedIsLostInFiveKills() throws Exception {
    killAndCheck(5);
  }

  @Test
  @Tag("long")
  void nothingAcknowledgedIsLostInAThousandKills() throws Exception {
    killAndCheck(Integer.getInteger("chordlog.kills", 1_000));
  }

  private void killAndCheck(int kills) throws Exception {
    for (int i = 0; i < kills; i++) {
      killOnce();
      check();
    }
    System.out.println(
        kills + " kills, " + acknowledged.size() + " readings acknowledged, all of them kept");
  }

  private void killOnce() throws Exception {
    Process process = start();
    int until = random.nextInt(MOST_ACKNOWLEDGED);
    try (BufferedReader out =
        new BufferedReader(
            new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8))) {
      int seen = 0;
      String line = out.readLine();
      while (line != null) {
        note(line);
        if (seen++ == until) {
          process.toHandle().destroyForcibly();
        }
        line = out.readLine();
      }
    }
    Await.end(process);
    assertEquals(128 + 9, process.exitValue());
  }

  /** Lines that were whole when the process died count as seen by someone. */
  private void note(String line) {
    if (line.startsWith("kept ")) {
      assertTrue(acknowledged.add(Long.valueOf(line.substring(5))), line);
    } else {
      assertTrue(line.startsWith("started"), line);
    }
  }

  private Process start() throws IOException {
    return Children.start(
        Children.program(KilledWriter.class, "128m", directory, like.jobId(), like.setUpId())
            .redirectErrorStream(true));
  }

  private void check() {
    assertEquals(List.of(), new SqliteFiles(directory).audit());
    try (SqliteStore store = SqliteStore.openForReading(directory)) {
      long last = store.readings().lastSequence("A");
      long afterId = 0;
      List<Reading> page;
      long sequence = 0;
      do {
        page = store.readings().all(afterId, 5_000);
        for (Reading reading : page) {
          sequence++;
          assertEquals(
              Some.reading("A", sequence, like.jobId(), like.setUpId()).withId(reading.id()),
              reading);
          afterId = reading.id();
        }
      } while (!page.isEmpty());
      assertEquals(last, sequence);
      assertTrue(acknowledged.stream().allMatch(each -> each >= 1 && each <= last));
    }
  }
}
