package org.chordlog.link;

/** An open source of bytes. One thread reads it; {@link #close()} may come from any thread. */
public interface Link extends AutoCloseable {
  /**
   * Waits at most half a second for bytes.
   *
   * @return how many were read; 0 when nothing came (a tick)
   * @throws LinkException when the device is gone
   */
  int read(byte[] buffer) throws LinkException;

  /** As {@link #read}, but takes only what is there now. */
  int readAvailable(byte[] buffer) throws LinkException;

  /** Sends bytes, for indicators that answer on request. */
  void write(byte[] bytes) throws LinkException;

  /**
   * Whether the foot switch on a modem-control line is closed; false where there is no such line.
   */
  boolean footSwitchClosed();

  @Override
  void close();
}
