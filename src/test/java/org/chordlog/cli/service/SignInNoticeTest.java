package org.chordlog.cli.service;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.nio.file.Files;
import java.nio.file.Path;
import org.chordlog.measure.BadInput;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The file of the text on the page Sign in. */
final class SignInNoticeTest {
  @TempDir Path folder;

  private String read(String text) throws Exception {
    return SignInNotice.read(Files.writeString(folder.resolve("notice.txt"), text));
  }

  @Test
  void itsLinesAreKept() throws Exception {
    assertEquals("For staff.\n\nAll is recorded.", read("For staff.\r\n\r\nAll is recorded.\n"));
  }

  @Test
  void whatIsNoNoticeIsRefused() {
    for (String text : new String[] {"", " \n", "x".repeat(2_001), "x".repeat(9_000), "a\u001bb"}) {
      BadInput refused = assertThrows(BadInput.class, () -> read(text));
      assertEquals(SignInNotice.OPTION, refused.faults().get(0).field());
    }
    assertThrows(BadInput.class, () -> SignInNotice.read(folder.resolve("none")));
  }
}
