package org.chordlog.harness;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assumptions.abort;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Objects;

/**
 * Where npm's packages for the tests are: the folder that the variable CHORDLOG_TEST_NPM names,
 * else {@code /opt/chordlog-test/node_modules}, into which {@code .ci/run} installs them.
 */
public final class NodePackages {
  public static final Path NODE = Path.of("/usr/bin/node");

  private static final Path FOLDER =
      Path.of(
          Objects.requireNonNullElse(
              System.getenv("CHORDLOG_TEST_NPM"), "/opt/chordlog-test/node_modules"));

  private NodePackages() {}

  /** The folder, which holds that package; skips the test, loudly, outside a CI run where not. */
  public static Path with(String name, String version) {
    if (!Files.isExecutable(NODE) || !Files.isDirectory(FOLDER.resolve(name))) {
      String missing =
          "no %s or no %s in %s: npm install --prefix %s %s@%s"
              .formatted(NODE, name, FOLDER, FOLDER.getParent(), name, version);
      assertFalse(Boolean.parseBoolean(System.getenv("CI")), missing);
      System.err.println("SKIPPED: " + missing);
      abort(missing);
    }
    return FOLDER;
  }
}
