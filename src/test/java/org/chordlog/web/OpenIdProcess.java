package org.chordlog.web;

import java.io.IOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.chordlog.Await;
import org.chordlog.harness.Children;
import org.chordlog.harness.NodePackages;

/** npm's oidc-provider as a process of its own. */
record OpenIdProcess(Process process, Path said) implements AutoCloseable {
  /** Skipped, loudly, only where it is not installed and this is not a CI run. */
  static OpenIdProcess start(Path folder, int servicePort) throws Exception {
    return start(folder, servicePort, List.of());
  }

  /** Over https, with NAME.pem and NAME.key. */
  static OpenIdProcess secure(Path folder, int servicePort, String name) throws Exception {
    return start(
        folder,
        servicePort,
        Stream.of(".pem", ".key").map(each -> folder.resolve(name + each).toString()).toList());
  }

  private static OpenIdProcess start(Path folder, int servicePort, List<String> certificate)
      throws Exception {
    Path packages = NodePackages.with("oidc-provider", "9.13.3");
    Path said = folder.resolve("provider.out");
    OpenIdProcess started =
        new OpenIdProcess(started(said, packages, servicePort, certificate), said);
    Await.until(() -> Files.readString(said).contains("\n"), () -> Files.readString(said));
    return started;
  }

  private static Process started(
      Path said, Path packages, int servicePort, List<String> certificate) throws IOException {
    List<String> command = new ArrayList<>();
    command.add(NodePackages.NODE.toString());
    command.add(Path.of("src/test/resources/openid/provider.mjs").toAbsolutePath().toString());
    command.add(packages.toString());
    command.add(String.valueOf(servicePort));
    command.addAll(certificate);
    return Children.start(
        new ProcessBuilder(command)
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
