package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assumptions.abort;

import java.io.IOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Objects;
import org.chordlog.Await;
import org.chordlog.harness.Children;

/**
 * npm's oidc-provider as a process of its own. Its packages are looked for in the folder that the
 * variable CHORDLOG_TEST_NPM names, else in /opt/chordlog-test/node_modules.
 */
record OpenIdProcess(Process process, Path said) implements AutoCloseable {
  private static final Path NODE = Path.of("/usr/bin/node");
  private static final Path PACKAGES =
      Path.of(
          Objects.requireNonNullElse(
              System.getenv("CHORDLOG_TEST_NPM"), "/opt/chordlog-test/node_modules"));

  /** Skipped, loudly, only where it is not installed and this is not a CI run. */
  static OpenIdProcess start(Path folder, int servicePort) throws Exception {
    if (!Files.isExecutable(NODE) || !Files.isDirectory(PACKAGES.resolve("oidc-provider"))) {
      String missing =
          "no " + NODE + " or no " + PACKAGES + "/oidc-provider: npm install oidc-provider@9.13.3";
      assertFalse(Boolean.parseBoolean(System.getenv("CI")), missing);
      System.err.println("SKIPPED: " + missing);
      abort(missing);
    }
    Path said = folder.resolve("provider.out");
    OpenIdProcess started = new OpenIdProcess(started(said, servicePort), said);
    Await.until(() -> Files.readString(said).contains("\n"), () -> Files.readString(said));
    return started;
  }

  private static Process started(Path said, int servicePort) throws IOException {
    return Children.start(
        new ProcessBuilder(
                NODE.toString(),
                Path.of("src/test/resources/openid/provider.mjs").toAbsolutePath().toString(),
                PACKAGES.toString(),
                String.valueOf(servicePort))
            .redirectOutput(said.toFile())
            .redirectError(said.resolveSibling("provider.err").toFile()));
  }

  URI issuer() throws IOException {
    return URI.create(Files.readAllLines(said).get(0));
  }

  @Override
  public void close() {
    process.destroyForcibly();
  }
}
