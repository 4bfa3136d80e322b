package org.chordlog.file;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.api.io.TempDir;

final class FileTroubleTest {
  @TempDir Path folder;

  @Test
  void whatIsNotThereIsNoTextOrIsAFolderIsSaidOfWhatIsRead() throws IOException {
    Path none = folder.resolve("none.csv");
    Path bytes = Files.write(folder.resolve("bytes.csv"), new byte[] {(byte) 0xff, (byte) 0xfe});
    assertEquals("does not exist", readingOf(none));
    assertEquals("is not text in UTF-8", readingOf(bytes));
    assertEquals("is a folder", readingOf(folder));
    assertEquals(
        "may not be read by this user",
        FileTrouble.reading(bytes, new AccessDeniedException(bytes.toString())));
  }

  @Test
  void whatStandsInTheWayIsSaidOfWhatIsWritten() throws IOException {
    Path there = Files.createFile(folder.resolve("there.csv"));
    assertEquals(
        "can't be written: its folder does not exist",
        writing(() -> Files.writeString(folder.resolve("no/new.csv"), "x")));
    assertEquals(
        "can't be written: a file of that name stands in the way",
        writing(() -> Files.createFile(there)));
    assertEquals(
        "can't be written: this user may not write there",
        FileTrouble.writing(new AccessDeniedException(there.toString())));
  }

  @Test
  void theSystemsOwnWordsWithoutTheNameOfTheFile() {
    assertEquals(
        "can't be written: Read-only file system",
        FileTrouble.writing(new FileSystemException("a.csv", null, "Read-only file system")));
    assertEquals("java.io.IOException", FileTrouble.reason(new IOException()));
  }

  /** A stream has no file's name; a new file has. */
  @Test
  void aFullDiskIsSaidInTheWordsThatHealthHas() {
    String full = "No space left on device";
    assertEquals("can't be written: the disk is full", FileTrouble.writing(new IOException(full)));
    assertEquals(
        "can't be written: the disk is full",
        FileTrouble.writing(new FileSystemException("a.csv", null, full)));
  }

  private static String readingOf(Path file) {
    return FileTrouble.reading(file, assertThrows(IOException.class, () -> Files.readString(file)));
  }

  private static String writing(Executable work) {
    return FileTrouble.writing(assertThrows(IOException.class, work));
  }
}
