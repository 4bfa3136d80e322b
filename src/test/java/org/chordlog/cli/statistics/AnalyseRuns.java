package org.chordlog.cli.statistics;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.chordlog.harness.Ran;
import org.junit.jupiter.api.io.TempDir;

/** Runs analyse on a file. */
abstract class AnalyseRuns {
  @TempDir Path folder;

  Ran run(String content, String... options) throws IOException {
    Path file = Files.writeString(folder.resolve("data.csv"), content);
    return Ran.command(List.of("analyse", file.toString()), options);
  }
}
