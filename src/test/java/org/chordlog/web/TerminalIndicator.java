package org.chordlog.web;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import org.chordlog.simulator.PseudoTerminal;
import org.jspecify.annotations.Nullable;

/** An indicator on a pseudo-terminal: signed decimal lines, 50 a second. */
final class TerminalIndicator implements AutoCloseable {
  static final double FREE_MM = -5.0;
  private final Path link;
  private @Nullable PseudoTerminal terminal;
  private volatile byte[] line = line(FREE_MM);
  private volatile boolean closed;

  /** {@code link} names the device, whichever number it has. */
  TerminalIndicator(Path link) {
    this.link = link;
    terminal = open();
    Thread thread = new Thread(this::sendAll, "indicator");
    thread.setDaemon(true);
    thread.start();
  }

  private PseudoTerminal open() {
    try {
      PseudoTerminal opened = PseudoTerminal.open();
      opened.publish(link);
      return opened;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  Path port() {
    return link;
  }

  /** The cable is pulled. */
  synchronized void unplug() {
    if (terminal != null) {
      terminal.close();
      terminal = null;
    }
  }

  /** The cable is back; the device may have another number. */
  synchronized void plugIn() {
    terminal = open();
  }

  void show(double mm) {
    line = line(mm);
  }

  private static byte[] line(double mm) {
    return String.format(Locale.ROOT, "%+07.3f\r\n", mm).getBytes(StandardCharsets.US_ASCII);
  }

  private void sendAll() {
    while (!closed) {
      send(line);
      LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(20));
    }
  }

  private synchronized void send(byte[] line) {
    try {
      if (terminal != null) {
        terminal.write(line);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Override
  public void close() {
    closed = true;
    unplug();
  }
}
