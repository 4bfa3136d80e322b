package org.chordlog.web;

import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.ServerSocket;
import org.chordlog.web.http.WebSettings;

/**
 * A port for one service after the other of this process, so that the browser has the modules and
 * styles of the pages from the first. Of anything else it knows nothing when a service begins.
 */
final class SamePort {
  private static int port;

  private SamePort() {}

  /** The same settings; where any free port is asked for, with that port if it is free. */
  static synchronized WebSettings of(WebSettings wanted) {
    if (wanted.port() != 0 || !wanted.loopback() || !free()) {
      return wanted;
    }
    SharedBrowser.forget(port);
    return new WebSettings(
        wanted.host(),
        port,
        wanted.token(),
        wanted.maxEventClients(),
        wanted.maxEventClientsPerAddress(),
        wanted.maxRequestBytes(),
        wanted.reach());
  }

  /** Or taken by nobody since, at the first time found. */
  private static boolean free() {
    try (ServerSocket socket = new ServerSocket()) {
      socket.setReuseAddress(true);
      socket.bind(new InetSocketAddress(InetAddress.getLoopbackAddress(), port));
      port = socket.getLocalPort();
      return true;
    } catch (IOException taken) {
      return false;
    }
  }
}
