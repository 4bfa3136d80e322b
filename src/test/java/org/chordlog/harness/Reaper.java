package org.chordlog.harness;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Reads lines that name processes, and kills those and what they started once its input ends. A
 * process is named by its id and its start, so that another with the same id is left alone.
 */
final class Reaper {
  private static final long SAME_START_MILLIS = 10_000;

  private Reaper() {}

  public static void main(String[] arguments) throws IOException {
    List<String> watched = new ArrayList<>();
    BufferedReader in =
        new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8));
    for (String line = in.readLine(); line != null; line = in.readLine()) {
      watched.add(line);
    }
    List<ProcessHandle> left =
        watched.stream()
            .flatMap(line -> named(line).stream())
            .flatMap(each -> Stream.concat(each.descendants(), Stream.of(each)))
            .filter(each -> !each.equals(ProcessHandle.current()))
            .toList();
    left.forEach(ProcessHandle::destroyForcibly);
  }

  static String line(ProcessHandle process) {
    return process.pid() + " " + startMillis(process);
  }

  /** The boot time that a start is counted from is told by the kernel to a second only. */
  static Optional<ProcessHandle> named(String line) {
    String[] words = line.split(" ", 2);
    long start = Long.parseLong(words[1]);
    return ProcessHandle.of(Long.parseLong(words[0]))
        .filter(each -> Math.abs(startMillis(each) - start) <= SAME_START_MILLIS);
  }

  private static long startMillis(ProcessHandle process) {
    return process.info().startInstant().map(Instant::toEpochMilli).orElse(0L);
  }
}
