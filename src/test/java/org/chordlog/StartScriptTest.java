package org.chordlog;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.chordlog.harness.Children;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The start script of the zip and the package, beside stand-ins for Java. */
final class StartScriptTest {
  @TempDir Path temporary;
  private Path folder;

  @BeforeEach
  void unpack() throws IOException {
    folder = Files.createDirectory(temporary.resolve("with a space"));
    Path script = Files.copy(Path.of("src/dist/bin/chordlog"), folder.resolve("chordlog"));
    runnable(script);
    Path unused = Files.createFile(folder.resolve("chordlog.jar"));
  }

  private static void runnable(Path file) throws IOException {
    Path unused = Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rwxr-xr-x"));
  }

  /** One that prints what it was started with, under a home that says its version. */
  private Path java(String home, String version) throws IOException {
    Path bin = Files.createDirectories(folder.resolve(home).resolve("bin"));
    Path java = Files.writeString(bin.resolve("java"), "#!/bin/sh\nprintf '%s|' \"$@\"\n");
    runnable(java);
    if (!version.isEmpty()) {
      Path release = folder.resolve(home).resolve("release");
      Path unused = Files.writeString(release, "JAVA_VERSION=\"" + version + "\"\n");
    }
    return bin;
  }

  private String run(int expected, String path, String home, String... arguments)
      throws IOException, InterruptedException {
    return run(expected, path, home, Map.of(), arguments);
  }

  private String run(
      int expected, String path, String home, Map<String, String> more, String... arguments)
      throws IOException, InterruptedException {
    List<String> command = new ArrayList<>(List.of(folder.resolve("chordlog").toString()));
    command.addAll(List.of(arguments));
    ProcessBuilder builder = new ProcessBuilder(command).redirectErrorStream(true);
    builder.environment().clear();
    builder.environment().put("PATH", path);
    builder.environment().putAll(more);
    if (!home.isEmpty()) {
      builder.environment().put("JAVA_HOME", home);
    }
    Process process = Children.start(builder);
    String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertEquals(expected, process.waitFor(), said);
    return said;
  }

  @Test
  void theJarBesideItIsStartedByTheJavaOfThePath() throws Exception {
    String said = run(0, java("jdk 17", "17.0.15") + ":/usr/bin:/bin", "", "report", "a b");
    String jar = folder.resolve("chordlog.jar").toString();
    assertEquals("-XX:+UseSerialGC|-jar|" + jar + "|report|a b|", said);
  }

  /** As a service and cron start it: otherwise Java reads no letter beyond ASCII in a name. */
  @Test
  void whereNoLanguageIsNamedLettersAreThoseOfUtf8() throws Exception {
    Path bin = java("jdk 17", "17.0.15");
    Path unused = Files.writeString(bin.resolve("java"), "#!/bin/sh\nprintf '%s' \"$LC_ALL\"\n");
    String path = bin + ":/usr/bin:/bin";
    assertEquals("C.UTF-8", run(0, path, ""));
    assertEquals("de_DE.UTF-8", run(0, path, "", Map.of("LC_ALL", "de_DE.UTF-8")));
    assertEquals("", run(0, path, "", Map.of("LANG", "en_GB.UTF-8")));
  }

  @Test
  void aJavaThatIsTooOldIsNamed() throws Exception {
    for (String version : List.of("11.0.24", "1.8.0_402", "9")) {
      Path old = java("old " + version, version);
      String said = run(2, old + ":/usr/bin:/bin", "");
      assertTrue(said.contains("needs Java 17 or newer, and '" + old + "/java' is Java "), said);
      assertEquals(1, said.lines().count(), said);
    }
    run(0, java("unknown", "") + ":/usr/bin:/bin", "", "--help");
  }

  @Test
  void javaHomeComesFirstAndIsNamedWhereItHoldsNone() throws Exception {
    Path old = java("old", "11");
    String home = java("new", "21.0.3").resolveSibling("").toString();
    run(0, old + ":/usr/bin:/bin", home, "--help");
    String said = run(2, old + ":/usr/bin:/bin", folder + "/nowhere");
    assertTrue(said.contains("/nowhere/bin/java' was not found"), said);
  }
}
