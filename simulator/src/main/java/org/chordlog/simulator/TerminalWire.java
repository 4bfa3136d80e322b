package org.chordlog.simulator;

import java.io.IOException;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;

/** A pseudo-terminal, under a link if one is given, that can be unplugged. */
final class TerminalWire implements Wire {
  private final @Nullable Path link;
  private PseudoTerminal terminal;
  private @Nullable PseudoTerminal spacer;
  private boolean closed;

  private TerminalWire(PseudoTerminal terminal, @Nullable Path link) {
    this.terminal = terminal;
    this.link = link;
  }

  static TerminalWire open(@Nullable Path link) throws IOException {
    return new TerminalWire(published(link), link);
  }

  private static PseudoTerminal published(@Nullable Path link) throws IOException {
    PseudoTerminal terminal = PseudoTerminal.open();
    try {
      if (link != null) {
        terminal.publish(link);
      }
      return terminal;
    } catch (IOException e) {
      terminal.close();
      throw e;
    }
  }

  @Override
  public String address() {
    return link == null ? terminal.path().toString() : link.toString();
  }

  @Override
  public boolean connected() {
    return terminal.connected();
  }

  @Override
  public void send(byte[] bytes) throws IOException {
    terminal.write(bytes);
  }

  @Override
  public int receive(byte[] buffer) throws IOException {
    return terminal.read(buffer);
  }

  @Override
  public int baudRate() throws IOException {
    return terminal.baudRate();
  }

  @Override
  public synchronized void unplug() {
    terminal.close();
  }

  /** The old number remains taken if another one is asked for. */
  @Override
  public synchronized void plugIn(boolean otherNumber) throws IOException {
    if (closed) {
      return;
    }
    PseudoTerminal fresh = PseudoTerminal.open();
    if (otherNumber && fresh.path().equals(terminal.path())) {
      if (spacer != null) {
        spacer.close();
      }
      spacer = fresh;
      fresh = PseudoTerminal.open();
    }
    terminal = fresh;
    if (link != null) {
      fresh.publish(link);
    }
  }

  @Override
  public synchronized void close() {
    closed = true;
    terminal.close();
    if (spacer != null) {
      spacer.close();
    }
  }
}
