package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assumptions.abort;

import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.chordlog.Await;
import org.chordlog.harness.Children;

/**
 * The proxy of Debian's nginx-light as a process of its own, with a configuration that the handbook
 * gives; only places and ports are this computer's.
 */
record Nginx(Process process, int port) implements AutoCloseable {
  private static final Path PROGRAM = Path.of("/usr/sbin/nginx");
  private static final Pattern BLOCK = Pattern.compile("```nginx\n(.*?)```", Pattern.DOTALL);
  static final String NAME = "shop.example";

  /** The configurations in the handbook, in their order. */
  static List<String> described() throws IOException {
    return BLOCK
        .matcher(Files.readString(Path.of("src/docs/service.md")))
        .results()
        .map((MatchResult found) -> found.group(1))
        .toList();
  }

  /** Skipped, loudly, only where it is not installed and this is not a CI run. */
  static Nginx start(Path folder, String described, int servicePort) throws Exception {
    if (!Files.isExecutable(PROGRAM)) {
      String missing = PROGRAM + " is missing: install nginx-light";
      assertFalse(Boolean.parseBoolean(System.getenv("CI")), missing);
      System.err.println("SKIPPED: " + missing);
      abort(missing);
    }
    int port = free();
    Path file = folder.resolve("nginx.conf");
    Files.writeString(file, around(folder, here(folder, described, port, servicePort)));
    Nginx started = new Nginx(started(folder, file), port);
    Await.until(started::listens, () -> Files.readString(folder.resolve("nginx.err")));
    return started;
  }

  private static int free() throws IOException {
    try (ServerSocket socket = new ServerSocket(0)) {
      return socket.getLocalPort();
    }
  }

  private static String here(Path folder, String described, int port, int servicePort) {
    return described
        .replace("listen 443 ssl", "listen " + port + " ssl")
        .replace("listen 80;", "listen " + port + ";")
        .replace("chordlog.example", NAME)
        .replace("/etc/ssl/chordlog.pem", folder.resolve("service.pem").toString())
        .replace("/etc/ssl/chordlog.key", folder.resolve("service.key").toString())
        .replace("127.0.0.1:8080", "127.0.0.1:" + servicePort);
  }

  /** What a distribution's own configuration has around it. */
  private static String around(Path folder, String server) {
    return """
        daemon off;
        pid %1$s/nginx.pid;
        events {}
        http {
          access_log off;
          client_body_temp_path %1$s/body;
          proxy_temp_path %1$s/proxy;
          fastcgi_temp_path %1$s/fastcgi;
          uwsgi_temp_path %1$s/uwsgi;
          scgi_temp_path %1$s/scgi;
          %2$s
        }
        """
        .formatted(folder, server);
  }

  private static Process started(Path folder, Path file) throws IOException {
    return Children.start(
        new ProcessBuilder(
                PROGRAM.toString(), "-e", "stderr", "-p", folder.toString(), "-c", file.toString())
            .redirectOutput(folder.resolve("nginx.out").toFile())
            .redirectError(folder.resolve("nginx.err").toFile()));
  }

  private boolean listens() {
    try (Socket socket = new Socket()) {
      socket.connect(new InetSocketAddress(InetAddress.getLoopbackAddress(), port));
      return true;
    } catch (IOException e) {
      return false;
    }
  }

  @Override
  public void close() {
    process.destroy();
  }
}
