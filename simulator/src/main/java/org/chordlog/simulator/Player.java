package org.chordlog.simulator;

import java.io.IOException;
import java.util.List;

/** Plays something through devices of its own, from their first opening on. */
public interface Player extends AutoCloseable {
  /** What the service has to open: paths, or host:port. */
  List<String> addresses();

  /** Plays until closed, or the thread is interrupted. */
  void run() throws IOException, InterruptedException;

  /** Takes a fault as typed, from any thread; refuses what it does not know. */
  void fault(String line);

  /** Takes a line as typed, a fault or what else it knows; what it answers, mostly nothing. */
  default String told(String line) {
    fault(line);
    return "";
  }

  @Override
  void close();
}
