package org.chordlog.simulator;

import java.io.IOException;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;

/** A pseudo-terminal, under a link if one is given. */
final class TerminalWire implements Wire {
  private final PseudoTerminal terminal;
  private final @Nullable Path link;

  private TerminalWire(PseudoTerminal terminal, @Nullable Path link) {
    this.terminal = terminal;
    this.link = link;
  }

  static TerminalWire open(@Nullable Path link) throws IOException {
    PseudoTerminal terminal = PseudoTerminal.open();
    try {
      if (link != null) {
        terminal.publish(link);
      }
      return new TerminalWire(terminal, link);
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
  public void close() {
    terminal.close();
  }
}
