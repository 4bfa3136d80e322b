package org.chordlog.simulator;

import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.ByteBuffer;
import java.nio.channels.ServerSocketChannel;
import java.nio.channels.SocketChannel;
import org.jspecify.annotations.Nullable;

/** One client at a time on a TCP port of this computer, where there are no pseudo-terminals. */
final class SocketWire implements Wire {
  private final ServerSocketChannel server;
  private @Nullable SocketChannel client;
  private boolean unplugged;

  private SocketWire(ServerSocketChannel server) {
    this.server = server;
  }

  /** Port 0 takes a free one. */
  static SocketWire open(int port) throws IOException {
    ServerSocketChannel server = ServerSocketChannel.open();
    server.bind(new InetSocketAddress(InetAddress.getLoopbackAddress(), port));
    server.configureBlocking(false);
    return new SocketWire(server);
  }

  @Override
  public String address() {
    return "127.0.0.1:" + server.socket().getLocalPort();
  }

  @Override
  public boolean connected() throws IOException {
    if (client == null && !unplugged) {
      client = server.accept();
      if (client != null) {
        client.configureBlocking(false);
      }
    }
    return client != null;
  }

  @Override
  public void send(byte[] bytes) throws IOException {
    if (connected() && client != null) {
      try {
        client.write(ByteBuffer.wrap(bytes));
      } catch (IOException e) {
        drop();
      }
    }
  }

  @Override
  public int receive(byte[] buffer) throws IOException {
    if (!connected() || client == null) {
      return -1;
    }
    try {
      int n = client.read(ByteBuffer.wrap(buffer));
      if (n >= 0) {
        return n;
      }
    } catch (IOException e) {
      // the client is gone, as below
    }
    drop();
    return -1;
  }

  /** Drops its client, and takes none until it is plugged in. */
  @Override
  public void unplug() {
    unplugged = true;
    drop();
  }

  /** A TCP port has no other number. */
  @Override
  public void plugIn(boolean otherNumber) {
    unplugged = false;
  }

  private void drop() {
    try {
      if (client != null) {
        client.close();
      }
    } catch (IOException e) {
      // it is gone either way
    }
    client = null;
  }

  @Override
  public void close() {
    drop();
    try {
      server.close();
    } catch (IOException e) {
      // nothing is left to close
    }
  }
}
