package org.chordlog;

import java.io.IOException;
import java.lang.StackWalker.StackFrame;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;

/** The statement of a test that waits, as it is written: it says best what is waited for. */
final class WaitingLine {
  private static final List<Path> SOURCES =
      List.of(Path.of("src/test/java"), Path.of("simulator/src/test/java"));
  private static final int MOST_LINES = 12;

  private WaitingLine() {}

  static String text() {
    return StackWalker.getInstance(StackWalker.Option.RETAIN_CLASS_REFERENCE)
        .walk(frames -> frames.filter(WaitingLine::waits).findFirst())
        .map(frame -> statement(frame) + " at " + frame.toStackTraceElement())
        .orElse("");
  }

  private static boolean waits(StackFrame frame) {
    Class<?> type = frame.getDeclaringClass();
    return type != Await.class && type != WaitingLine.class && !type.isHidden();
  }

  private static String statement(StackFrame frame) {
    String file = frame.getDeclaringClass().getPackageName().replace('.', '/') + "/";
    return SOURCES.stream()
        .map(folder -> folder.resolve(file + frame.getFileName()))
        .filter(Files::exists)
        .findFirst()
        .map(source -> statement(source, frame.getLineNumber()))
        .orElse("");
  }

  /** From that line on to the one that ends the statement. */
  private static String statement(Path source, int number) {
    try (Stream<String> lines = Files.lines(source)) {
      StringBuilder text = new StringBuilder();
      for (String line : lines.skip(number - 1L).limit(MOST_LINES).map(String::strip).toList()) {
        text.append(line).append(' ');
        if (line.endsWith(";")) {
          break;
        }
      }
      return text.toString().strip();
    } catch (IOException e) {
      return "";
    }
  }
}
