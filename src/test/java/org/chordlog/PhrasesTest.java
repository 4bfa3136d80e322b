package org.chordlog;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** One phrase for one thing, in all that a person may read. */
final class PhrasesTest {
  /** What is not there "does not exist"; a record has a number. */
  private static final Pattern OTHERS =
      Pattern.compile("\"is not there\"| is not there\\.|\"(?:[^\"]* )?the id of ");

  @Test
  void messagesSayWhatDoesNotExistInOneWay() throws IOException {
    assertEquals(List.of(), found("src/main/java"));
    assertEquals(List.of(), found("simulator/src/main/java"));
  }

  private static List<String> found(String folder) throws IOException {
    try (Stream<Path> files = Files.walk(Path.of(folder))) {
      return files
          .filter(each -> each.toString().endsWith(".java"))
          .filter(each -> OTHERS.matcher(text(each)).find())
          .map(Path::toString)
          .toList();
    }
  }

  private static String text(Path file) {
    try {
      return Files.readString(file);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
