package org.chordlog.cli.service;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import org.chordlog.Await;
import org.chordlog.cli.common.ExitCode;
import org.chordlog.harness.Children;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** With too small a heap the whole program ends and says so, whichever thread used it up. */
@Tag("slow")
final class OutOfMemoryTest {
  @ParameterizedTest
  @ValueSource(strings = {"thread", "task", "timer", "caught", "request"})
  void theProgramEndsAndSaysSo(String where) throws Exception {
    Process program =
        Children.start(Children.program(MemoryUser.class, "24m", where).redirectErrorStream(true));
    try {
      Await.end(program);
      String said = new String(program.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
      assertEquals(ExitCode.OUT_OF_MEMORY, program.exitValue(), said);
      assertTrue(said.contains("Memory is used up"), said);
    } finally {
      program.destroyForcibly();
    }
  }
}
