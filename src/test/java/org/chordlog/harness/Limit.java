package org.chordlog.harness;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.charset.StandardCharsets;

/** The largest file that a running process may write, by prlimit(1): a full disk without rights. */
final class Limit {
  private Limit() {}

  /** Only the soft limit, so that it may be lifted again. */
  static void files(long pid, long bytes) throws IOException, InterruptedException {
    set(pid, "--fsize=" + bytes + ":");
  }

  static void lift(long pid) throws IOException, InterruptedException {
    set(pid, "--fsize=unlimited:");
  }

  private static void set(long pid, String limit) throws IOException, InterruptedException {
    run("prlimit", "--pid", Long.toString(pid), limit);
  }

  /** Refuses a command that fails. */
  static void run(String... command) throws IOException, InterruptedException {
    Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
    String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertEquals(0, process.waitFor(), said);
  }

  /** Whether that command does its work here. */
  static boolean works(String... command) throws IOException, InterruptedException {
    Process process =
        new ProcessBuilder(command)
            .redirectErrorStream(true)
            .redirectOutput(ProcessBuilder.Redirect.DISCARD)
            .start();
    return process.waitFor() == 0;
  }
}
