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
import org.chordlog.harness.NodePackages;

/** A receiver of webhooks in a process of its own, which verifies by npm's standardwebhooks. */
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
    Path modules = NodePackages.with("standardwebhooks", "1.1.1");
    Path script = Files.createTempFile(folder, "receiver", ".js");
    try (var in = WebhookProcess.class.getResourceAsStream("/notify/webhook-receiver.js")) {
      Files.write(script, Objects.requireNonNull(in).readAllBytes());
    }
    List<String> command =
        new ArrayList<>(List.of(NodePackages.NODE.toString(), script.toString(), statuses));
    command.addAll(List.of(secrets));
    ProcessBuilder builder =
        new ProcessBuilder(command).redirectError(ProcessBuilder.Redirect.INHERIT);
    builder.environment().put("NODE_PATH", modules.toString());
    Process process = Children.start(builder);
    BufferedReader said =
        new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
    return new WebhookProcess(process, said, Integer.parseInt(said.readLine()));
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
