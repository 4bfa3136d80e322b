package org.chordlog.harness;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Reads lines that name processes, and kills those and what they started once its input ends. A
 * process is named by its id and its start, so that another with the same id is left alone.
 */
final class Reaper {
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
            .toList();
    left.forEach(ProcessHandle::destroyForcibly);
  }

  static String line(ProcessHandle process) {
    return process.pid() + " " + process.info().startInstant().map(Object::toString).orElse("?");
  }

  private static Optional<ProcessHandle> named(String line) {
    long pid = Long.parseLong(line.substring(0, line.indexOf(' ')));
    return ProcessHandle.of(pid).filter(each -> line(each).equals(line));
  }
}
