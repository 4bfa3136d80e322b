package org.chordlog;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import org.chordlog.harness.Children;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Error Prone and NullAway find nothing in the code. The compiler reads it again for them, in a
 * program of the lowest priority, one part after the other, that uses what the other tests leave of
 * the processors: compiling waits for nothing else, and with these checks it took three times as
 * long. Which checks, says {@code errorprone.checks} in pom.xml; while working {@code -Pfast}
 * compiles with them.
 */
@Tag("slow")
final class CheckedCodeTest {
  private static final List<String> PRIORITY = List.of("nice", "-n", "19");

  /** Much room for what is new: the compiler makes much that it soon needs no longer. */
  private static final List<String> ROOM = List.of("-Xms600m", "-Xmn400m");

  /** Nothing is written: the compiler stops where all that is left is to make classes. */
  private static final List<String> CHECK_ONLY =
      List.of(
          "-proc:none",
          "-implicit:none",
          "-XDcompilePolicy=simple",
          "-XDaddTypeAnnotationsToSymbol=true",
          "--should-stop=ifError=FLOW",
          "--should-stop=ifNoError=FLOW",
          "-Xlint:all,-processing,-classfile",
          "-Werror");

  @TempDir Path folder;

  @ParameterizedTest
  @ValueSource(strings = {"main", "test"})
  void errorProneFindsNothing(String part) throws Exception {
    Path said = folder.resolve("said");
    Process compiler =
        Children.start(
            new ProcessBuilder(command(sources(part)))
                .redirectErrorStream(true)
                .redirectOutput(said.toFile()));
    int code = compiler.waitFor();
    assertEquals("", Files.readString(said), "javac ended with " + code);
  }

  private List<String> command(Path sources) throws IOException {
    String libraries = System.getProperty("java.class.path");
    Stream<String> compiler =
        Stream.of(Path.of(System.getProperty("java.home"), "bin", "javac").toString());
    Stream<String> code =
        Stream.of("-cp", libraries, "--processor-path", libraries, "-d", folder.toString());
    Stream<String> what = Stream.of(checks(), "@" + sources);
    return Stream.of(PRIORITY.stream(), compiler, machine(), code, CHECK_ONLY.stream(), what)
        .flatMap(each -> each)
        .toList();
  }

  private static String checks() {
    return Objects.requireNonNull(
        System.getProperty("errorprone.checks"),
        "errorprone.checks, which Maven gives to its tests");
  }

  /** What the compiler within Maven is given: the same doors into it have to be open. */
  private static Stream<String> machine() throws IOException {
    Stream<String> doors = Files.readAllLines(Path.of(".mvn", "jvm.config")).stream();
    return Stream.concat(doors, ROOM.stream()).map(each -> "-J" + each.replace(' ', '='));
  }

  /** A file that names them, as the compiler reads it. */
  private Path sources(String part) throws IOException {
    List<String> files =
        Stream.of("src", "simulator/src")
            .flatMap(each -> javaFiles(Path.of(each, part, "java")))
            .toList();
    return Files.write(folder.resolve("files"), files);
  }

  private static Stream<String> javaFiles(Path top) {
    try (Stream<Path> all = Files.walk(top)) {
      return all.map(Path::toString).filter(each -> each.endsWith(".java")).toList().stream();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
