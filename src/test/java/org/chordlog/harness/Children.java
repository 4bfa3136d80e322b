package org.chordlog.harness;

import java.io.IOException;
import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Programs that tests start: none outlives the run, also where that is killed. A {@link Reaper}
 * reads from a pipe which they are; the pipe ends with this process, however it ends.
 */
public final class Children {
  private static @Nullable PrintStream reaper;

  private Children() {}

  public static Process start(ProcessBuilder program) throws IOException {
    Process child = program.start();
    watch(child.toHandle());
    return child;
  }

  /** A program among these classes, in a process of its own with that largest heap. */
  public static ProcessBuilder program(Class<?> main, String heap, Object... arguments) {
    List<String> command =
        ServiceProcess.briefJava(
            System.getProperty("java.class.path"),
            "-Xmx" + heap,
            "--enable-native-access=ALL-UNNAMED");
    command.add(main.getName());
    for (Object each : arguments) {
      command.add(each.toString());
    }
    return new ProcessBuilder(command);
  }

  /** Programs that a library has started, such as the driver of a browser. */
  public static void watchAll() {
    ProcessHandle.current().children().forEach(Children::watch);
  }

  private static synchronized void watch(ProcessHandle child) {
    reaper().println(Reaper.line(child));
  }

  private static synchronized PrintStream reaper() {
    PrintStream open =
        reaper == null ? new PrintStream(startReaper(), true, StandardCharsets.UTF_8) : reaper;
    reaper = open;
    return open;
  }

  private static java.io.OutputStream startReaper() {
    try {
      return new ProcessBuilder(command())
          .redirectOutput(ProcessBuilder.Redirect.DISCARD)
          .redirectError(ProcessBuilder.Redirect.INHERIT)
          .start()
          .getOutputStream();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static List<String> command() {
    String classes = Reaper.class.getProtectionDomain().getCodeSource().getLocation().getPath();
    return List.of(
        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
        "-Xmx16m",
        "-XX:+UseSerialGC",
        "-XX:TieredStopAtLevel=1",
        "-cp",
        classes,
        Reaper.class.getName());
  }
}
