package org.chordlog.web;

import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;

/** An indicator behind a serial device server: signed decimal lines over TCP, 100 a second. */
final class TcpIndicator implements AutoCloseable {
  static final double FREE_MM = -5.0;
  private final ServerSocket server;
  private volatile double valueMm = FREE_MM;
  private volatile OutputStream out = OutputStream.nullOutputStream();

  TcpIndicator() {
    try {
      server = new ServerSocket(0, 8, InetAddress.getLoopbackAddress());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    daemon(this::accept);
    daemon(this::sendAll);
  }

  private static void daemon(Runnable work) {
    Thread thread = new Thread(work, "indicator");
    thread.setDaemon(true);
    thread.start();
  }

  int port() {
    return server.getLocalPort();
  }

  void show(double mm) {
    valueMm = mm;
  }

  private void accept() {
    while (!server.isClosed()) {
      try {
        Socket client = server.accept();
        out = client.getOutputStream();
      } catch (IOException e) {
        return;
      }
    }
  }

  private void sendAll() {
    while (!server.isClosed()) {
      send();
      LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(10));
    }
  }

  private void send() {
    try {
      String line = String.format(Locale.ROOT, "%+07.3f\r\n", valueMm);
      out.write(line.getBytes(StandardCharsets.US_ASCII));
    } catch (IOException e) {
      out = OutputStream.nullOutputStream();
    }
  }

  @Override
  public void close() {
    try {
      server.close();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
