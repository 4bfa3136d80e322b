package org.chordlog.web;

import java.io.IOException;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import org.chordlog.harness.Directories;
import org.chordlog.web.http.Reach;
import org.chordlog.web.http.WebSettings;

/**
 * One address (127.0.0.2) without a key attacks a service that listens on all addresses, while
 * another (127.0.0.3) asks each half second whether it lives, and for a page and the stations. Told
 * are the longest answers and how many did not come within 5 s. Argument: seconds an attack (20).
 */
final class AttackLoad {
  private static final String ATTACKER = "127.0.0.2";
  private static final String OTHER = "127.0.0.3";
  private static final int PATIENCE_MILLIS = 5_000;
  private static final WebSettings OPEN =
      new WebSettings("0.0.0.0", 0, "a-token-of-this-test", 32, 16, 65_536)
          .reached(new Reach(Set.of("x"), List.of(), null));

  /** {@code each}: sent at once by each client; {@code then}: a byte of it now and then. */
  private record Attack(String name, int clients, String each, String then) {}

  private static final List<Attack> ATTACKS =
      List.of(
          new Attack("nobody attacks", 0, "", ""),
          new Attack("260 slow heads", 260, "GET / HTTP/1.1\r\nHost: x\r\nX-A: ", "a"),
          new Attack("60 slow bodies", 60, body(), " "),
          new Attack("30 clients that never read", 30, document().repeat(40), ""),
          new Attack("300 event streams", 300, "GET /api/events HTTP/1.1\r\nHost: x\r\n\r\n", ""));

  private final Served served;
  private long worstNanos;
  private int asked;
  private int failed;

  private AttackLoad(Served served) {
    this.served = served;
  }

  private static String body() {
    return "POST /api/session HTTP/1.1\r\nHost: x\r\nContent-Type: application/json\r\n"
        + "Content-Length: 5000\r\n\r\n{";
  }

  private static String document() {
    return "GET /api/openapi.json HTTP/1.1\r\nHost: x\r\n\r\n";
  }

  public static void main(String[] arguments) throws Exception {
    int seconds = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 20;
    Path folder = Files.createTempDirectory("attack");
    System.out.println("| attack | /health/live | page | stations |");
    System.out.println("|---|---|---|---|");
    for (Attack attack : ATTACKS) {
      try (Served served = new Served(Files.createTempDirectory(folder, "data"), OPEN)) {
        StringBuilder row = new StringBuilder("| " + attack.name());
        for (String path : List.of("/health/live", "/jobs.html", "/api/stations")) {
          row.append(" | ").append(new AttackLoad(served).under(attack, path, seconds));
        }
        System.out.println(row + " |");
      }
    }
    Directories.delete(folder);
  }

  private String under(Attack attack, String path, int seconds) {
    List<Socket> clients = new ArrayList<>();
    long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(seconds);
    while (System.nanoTime() < end) {
      refill(clients, attack);
      clients.removeIf(each -> !send(each, attack.then()));
      ask(path);
      LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(500));
    }
    clients.forEach(AttackLoad::close);
    return String.format(
        Locale.ROOT, "worst %.2f s, %d of %d failed", worstNanos / 1e9, failed, asked);
  }

  /** Whoever was cut off comes again. */
  private void refill(List<Socket> clients, Attack attack) {
    for (int i = clients.size(); i < attack.clients(); i++) {
      try {
        Socket client = socket(ATTACKER);
        if (send(client, attack.each())) {
          clients.add(client);
        }
      } catch (IOException refused) {
        return;
      }
    }
  }

  private Socket socket(String from) throws IOException {
    Socket socket = new Socket();
    try {
      socket.setReceiveBufferSize(1_024);
      socket.bind(new InetSocketAddress(from, 0));
      InetAddress service = InetAddress.getLoopbackAddress();
      socket.connect(new InetSocketAddress(service, served.web.port()), PATIENCE_MILLIS);
      return socket;
    } catch (IOException e) {
      close(socket);
      throw e;
    }
  }

  /** False when the service closed it. */
  private static boolean send(Socket client, String text) {
    try {
      OutputStream out = client.getOutputStream();
      out.write(text.getBytes(StandardCharsets.US_ASCII));
      return true;
    } catch (IOException e) {
      close(client);
      return false;
    }
  }

  private static void close(Socket socket) {
    try {
      socket.close();
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
  }

  private void ask(String path) {
    long start = System.nanoTime();
    asked++;
    try (Socket socket = socket(OTHER)) {
      socket.setSoTimeout(PATIENCE_MILLIS);
      String request = "GET " + path + " HTTP/1.1\r\nHost: x\r\nConnection: close\r\n\r\n";
      socket.getOutputStream().write(request.getBytes(StandardCharsets.US_ASCII));
      String status = new String(socket.getInputStream().readNBytes(12), StandardCharsets.US_ASCII);
      failed += status.matches("HTTP/1.1 20[04]") ? 0 : 1;
    } catch (IOException e) {
      failed++;
    }
    worstNanos = Math.max(worstNanos, System.nanoTime() - start);
  }
}
