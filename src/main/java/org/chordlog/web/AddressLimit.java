package org.chordlog.web;

import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.SocketAddress;
import java.nio.channels.SelectableChannel;
import java.nio.channels.SocketChannel;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import org.chordlog.web.http.Reach;
import org.eclipse.jetty.io.SelectorManager;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * What one address may take of the connections that all share ({@link AddressShares}: of the
 * threads). This computer itself is not limited: a proxy before the service speaks for many. Any
 * thread.
 */
final class AddressLimit implements SelectorManager.AcceptListener {
  static final int MOST_CONNECTIONS = 64;
  private static final Set<String> THIS_COMPUTER = Set.of("127.0.0.1", "0:0:0:0:0:0:0:1");
  private static final Logger LOG = LoggerFactory.getLogger(AddressLimit.class);
  private final Reach reach;
  private final Map<SelectableChannel, String> open = new ConcurrentHashMap<>();
  private final Map<String, Integer> counts = new ConcurrentHashMap<>();

  /** Trusted proxies are not limited either. */
  AddressLimit(Reach reach) {
    this.reach = reach;
  }

  static boolean isThisComputer(String address) {
    return THIS_COMPUTER.contains(address.replace("[", "").replace("]", ""));
  }

  @Override
  public void onAccepting(SelectableChannel channel) {
    String address = address(channel);
    if (address.isEmpty() || isThisComputer(address) || reach.trusts(address)) {
      return;
    }
    open.put(channel, address);
    if (counts.merge(address, 1, Integer::sum) > MOST_CONNECTIONS) {
      LOG.atDebug().addKeyValue("address", address).log("too many connections: closed");
      close(channel);
    }
  }

  private static String address(SelectableChannel channel) {
    try {
      SocketAddress remote =
          channel instanceof SocketChannel socket ? socket.getRemoteAddress() : null;
      InetAddress address = remote instanceof InetSocketAddress inet ? inet.getAddress() : null;
      return address == null ? "" : address.getHostAddress();
    } catch (IOException e) {
      return "";
    }
  }

  private static void close(SelectableChannel channel) {
    try {
      channel.close();
    } catch (IOException e) {
      // it is closed
    }
  }

  @Override
  public void onAcceptFailed(SelectableChannel channel, Throwable cause) {
    onClosed(channel);
  }

  @Override
  public void onClosed(SelectableChannel channel) {
    String address = open.remove(channel);
    if (address != null) {
      counts.computeIfPresent(address, (each, count) -> count == 1 ? null : (Integer) (count - 1));
    }
  }
}
