package org.chordlog.notify.webhook;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.chordlog.harness.Children;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Assumptions;

/**
 * A receiver of webhooks in a process of its own, which verifies by npm's standardwebhooks: in the
 * folder {@code target/npm}, or the one that the system property {@code chordlog.npm} names.
 */
public final class WebhookProcess implements AutoCloseable {
  private final Process process;
  private final BufferedReader said;
  private final int port;

  private WebhookProcess(Process process, BufferedReader said, int port) {
    this.process = process;
    this.said = said;
    this.port = port;
  }

  /** Answers with those statuses in turn; skips the test loudly where its parts are missing. */
  public static WebhookProcess answering(Path folder, String statuses, String... secrets)
      throws Exception {
    Path modules = modules();
    Path script = Files.createTempFile(folder, "receiver", ".js");
    try (var in = WebhookProcess.class.getResourceAsStream("/notify/webhook-receiver.js")) {
      Files.write(script, Objects.requireNonNull(in).readAllBytes());
    }
    List<String> command = new ArrayList<>(List.of("node", script.toString(), statuses));
    command.addAll(List.of(secrets));
    ProcessBuilder builder =
        new ProcessBuilder(command).redirectError(ProcessBuilder.Redirect.INHERIT);
    builder.environment().put("NODE_PATH", modules.toString());
    Process process = Children.start(builder);
    BufferedReader said =
        new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
    return new WebhookProcess(process, said, Integer.parseInt(said.readLine()));
  }

  private static Path modules() {
    Path modules =
        Path.of(System.getProperty("chordlog.npm", "target/npm"), "node_modules").toAbsolutePath();
    if (!Files.isDirectory(modules.resolve("standardwebhooks"))) {
      String missing =
          "standardwebhooks is not in "
              + modules
              + ": npm install --prefix target/npm"
              + " standardwebhooks@1.1.1";
      Assertions.assertFalse(Boolean.parseBoolean(System.getenv("CI")), missing);
      System.err.println("SKIPPED a test of webhooks: " + missing);
      Assumptions.abort(missing);
    }
    return modules;
  }

  public URI address() {
    return URI.create("http://127.0.0.1:" + port + "/told");
  }

  /** What it said of the next call that it got: id, "good" or the complaint, body. */
  public String next() {
    try {
      return String.valueOf(said.readLine());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Override
  public void close() {
    process.destroyForcibly().onExit().join();
  }
}
