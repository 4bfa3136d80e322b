package org.chordlog.simulator;

import java.io.IOException;

/** What the indicator's bytes go into. Nothing here waits. */
interface Wire extends AutoCloseable {
  /** Where the service finds it: a path, or host:port. */
  String address();

  boolean connected() throws IOException;

  void send(byte[] bytes) throws IOException;

  /** Takes what the service has sent; −1 while nobody is connected. */
  int receive(byte[] buffer) throws IOException;

  /** The rate that the service has set; 0 where there is none. */
  default int baudRate() throws IOException {
    return 0;
  }

  void unplug();

  void plugIn(boolean otherNumber) throws IOException;

  @Override
  void close();
}
