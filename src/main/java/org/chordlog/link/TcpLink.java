package org.chordlog.link;

import java.io.IOException;
import java.io.InputStream;
import java.net.Socket;
import java.net.SocketTimeoutException;
import org.chordlog.link.LinkException.Reason;

/** An open TCP connection. */
final class TcpLink implements Link {
  private final Socket socket;
  private final InputStream input;
  private final String name;

  TcpLink(Socket socket, String name) throws IOException {
    this.socket = socket;
    this.input = socket.getInputStream();
    this.name = name;
  }

  @Override
  public int read(byte[] buffer) throws LinkException {
    try {
      int count = input.read(buffer);
      if (count < 0) {
        throw new LinkException(Reason.LOST, name + " has closed the connection.");
      }
      return count;
    } catch (SocketTimeoutException e) {
      return 0;
    } catch (IOException e) {
      throw lost(e);
    }
  }

  @Override
  public int readAvailable(byte[] buffer) throws LinkException {
    try {
      return input.available() == 0 ? 0 : read(buffer);
    } catch (IOException e) {
      throw lost(e);
    }
  }

  @Override
  public void write(byte[] bytes) throws LinkException {
    try {
      socket.getOutputStream().write(bytes);
    } catch (IOException e) {
      throw lost(e);
    }
  }

  private LinkException lost(IOException e) {
    return new LinkException(Reason.LOST, name + " is lost: " + e.getMessage() + ".");
  }

  @Override
  public boolean footSwitchClosed() {
    return false;
  }

  @Override
  public void close() {
    try {
      socket.close();
    } catch (IOException e) {
      // a socket that can't be closed is gone already
    }
  }
}
