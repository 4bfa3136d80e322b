package org.chordlog.link;

import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.net.SocketTimeoutException;
import java.util.Locale;
import java.util.Optional;
import org.chordlog.link.LinkException.Reason;

/** A serial device server that hands the indicator's bytes over TCP. */
public record TcpSettings(String host, int port) implements LinkSettings {
  private static final int CONNECT_MILLIS = 1_500;

  @Override
  public <T> T match(Cases<T> cases) {
    return cases.tcp(this);
  }

  @Override
  public String target() {
    return host + ":" + port;
  }

  @Override
  public Link open() throws LinkException {
    Socket socket = new Socket();
    try {
      socket.connect(address(), CONNECT_MILLIS);
      socket.setTcpNoDelay(true);
      socket.setKeepAlive(true);
      socket.setSoTimeout(SerialOpener.TICK_MILLIS);
      return new TcpLink(socket, target());
    } catch (SocketTimeoutException e) {
      close(socket);
      throw new LinkException(
          Reason.MISSING, target() + " does not answer. Check its power, cable and address.");
    } catch (IOException e) {
      close(socket);
      throw new LinkException(Reason.REFUSED, target() + " refuses: " + e.getMessage() + ".");
    }
  }

  private InetSocketAddress address() throws LinkException {
    InetSocketAddress address = new InetSocketAddress(host, port);
    if (address.isUnresolved()) {
      throw new LinkException(Reason.MISSING, "The host name " + host + " is not known.");
    }
    refuseNoDevice(address.getAddress());
    return address;
  }

  /**
   * The address and port that this leads to now; the host as it was written where its name is not
   * known. Throws where no device can be at that address.
   */
  public String reached() throws LinkException {
    InetSocketAddress address = new InetSocketAddress(host, port);
    if (address.isUnresolved()) {
      return target().toLowerCase(Locale.ROOT);
    }
    refuseNoDevice(address.getAddress());
    return address.getAddress().getHostAddress() + ":" + port;
  }

  private void refuseNoDevice(InetAddress address) throws LinkException {
    Optional<String> noDevice = NoDevice.reason(address);
    if (noDevice.isPresent()) {
      throw new LinkException(Reason.NOT_A_PORT, host + " is " + noDevice.get() + ".");
    }
  }

  private static void close(Socket socket) {
    try {
      socket.close();
    } catch (IOException e) {
      // a socket that can't be closed is gone already
    }
  }
}
