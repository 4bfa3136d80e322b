package org.chordlog.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.chordlog.Main;
import org.chordlog.harness.Children;
import org.chordlog.harness.ServiceProcess;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.io.TempDirFactory;

/** The real program in a temporary folder that others may write too. */
@Tag("slow")
final class NativeFolderTest {
  @TempDir(factory = TempDirFactory.Standard.class)
  Path shared;

  private String ports() throws Exception {
    String folder = "-Djava.io.tmpdir=" + shared;
    List<String> command = ServiceProcess.briefJava(System.getProperty("java.class.path"), folder);
    command.addAll(List.of(Main.class.getName(), "ports", "--json"));
    Process process = Children.start(new ProcessBuilder(command).redirectErrorStream(true));
    String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertTrue(process.waitFor(60, TimeUnit.SECONDS));
    assertEquals(0, process.exitValue(), said);
    return said;
  }

  private List<String> names() throws Exception {
    List<String> names = new ArrayList<>();
    try (var all = Files.newDirectoryStream(shared)) {
      all.forEach(each -> names.add(String.valueOf(each.getFileName())));
    }
    return names;
  }

  /** Where the library would look for itself if it were left to it. */
  @Test
  void whatAnotherUserPutsThereIsNotLoadedAndNothingIsLeft() throws Exception {
    Path theirs = Files.createDirectories(shared.resolve("jSerialComm/2.11.4"));
    Path library = Files.writeString(theirs.resolve("libjSerialComm.so"), "no library");
    Files.setPosixFilePermissions(theirs, PosixFilePermissions.fromString("rwxrwxrwx"));
    String unused = ports();
    assertEquals("no library", Files.readString(library));
    assertEquals(List.of("jSerialComm"), names());
  }

  @Test
  void whatAKillLeftIsRemovedAndWhatBelongsToAProcessThatRunsIsNot() throws Exception {
    long gone = 1L << 22; // beyond the largest number of a process (proc(5), pid_max)
    Path left = Files.createDirectory(shared.resolve("chordlog-native-" + gone + "-1"));
    Path elsewhere = Files.writeString(shared.resolve("precious"), "kept");
    Files.createSymbolicLink(left.resolve("link"), elsewhere);
    long alive = ProcessHandle.current().pid();
    Path running = Files.createDirectory(shared.resolve("chordlog-native-" + alive + "-1"));
    String unused = ports();
    assertTrue(Files.notExists(left));
    assertTrue(Files.isDirectory(running));
    assertEquals("kept", Files.readString(elsewhere));
  }
}
