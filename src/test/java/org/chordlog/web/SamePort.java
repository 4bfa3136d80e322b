package org.chordlog.web;

import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.ServerSocket;
import org.chordlog.web.http.WebSettings;

/**
 * A port for one service after the other of this process, so that the browser has the modules and
 * styles of the pages from the first. Of anything else it knows nothing when a service begins. What
 * is served beside it has any free port. It is not among those that a connection may get as its
 * own.
 */
final class SamePort {
  private static final int LEAST = 20_000;
  private static final int MANY = 12_000;
  private static final int PORT = LEAST + (int) (ProcessHandle.current().pid() % MANY);
  private static boolean lent;

  private SamePort() {}

  /** The same settings; where any free port is asked for, with that port if it is free. */
  static synchronized WebSettings lend(WebSettings wanted) {
    if (!SharedBrowser.isInstalled()
        || lent
        || wanted.port() != 0
        || !wanted.loopback()
        || !free()) {
      return wanted;
    }
    lent = true;
    SharedBrowser.forget(PORT);
    return new WebSettings(
        wanted.host(),
        PORT,
        wanted.token(),
        wanted.maxEventClients(),
        wanted.maxEventClientsPerAddress(),
        wanted.maxRequestBytes(),
        wanted.reach());
  }

  /** When the service at that port has ended. */
  static synchronized void back(int port) {
    lent = lent && port != PORT;
  }

  private static boolean free() {
    try (ServerSocket socket = new ServerSocket()) {
      socket.setReuseAddress(true);
      socket.bind(new InetSocketAddress(InetAddress.getLoopbackAddress(), PORT));
      return true;
    } catch (IOException taken) {
      return false;
    }
  }
}
