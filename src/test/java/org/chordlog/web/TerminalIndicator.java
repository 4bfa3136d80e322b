package org.chordlog.web;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import org.chordlog.simulator.PseudoTerminal;

/** An indicator on a pseudo-terminal: signed decimal lines, 100 a second. */
final class TerminalIndicator implements AutoCloseable {
  static final double FREE_MM = -5.0;
  private final PseudoTerminal terminal;
  private volatile double valueMm = FREE_MM;
  private volatile boolean closed;

  TerminalIndicator() {
    try {
      terminal = PseudoTerminal.open();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    Thread thread = new Thread(this::sendAll, "indicator");
    thread.setDaemon(true);
    thread.start();
  }

  Path port() {
    return terminal.path();
  }

  void show(double mm) {
    valueMm = mm;
  }

  private void sendAll() {
    while (!closed) {
      String line = String.format(Locale.ROOT, "%+07.3f\r\n", valueMm);
      try {
        terminal.write(line.getBytes(StandardCharsets.US_ASCII));
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
      LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(10));
    }
  }

  @Override
  public void close() {
    closed = true;
    terminal.close();
  }
}
