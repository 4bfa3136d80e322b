package org.chordlog.link;

import com.fazecast.jSerialComm.SerialPort;
import java.util.concurrent.atomic.AtomicBoolean;
import org.chordlog.link.LinkException.Reason;
import org.chordlog.link.SerialSettings.FootSwitch;

/** An open serial port. A read that gives less than zero means that the device is gone. */
final class SerialLink implements Link {
  private final SerialPort port;
  private final String name;
  private final FootSwitch footSwitch;
  private final AtomicBoolean closed = new AtomicBoolean();

  SerialLink(SerialPort port, String name, FootSwitch footSwitch) {
    this.port = port;
    this.name = name;
    this.footSwitch = footSwitch;
  }

  @Override
  public int read(byte[] buffer) throws LinkException {
    return checked(port.readBytes(buffer, buffer.length));
  }

  @Override
  public int readAvailable(byte[] buffer) throws LinkException {
    int available = checked(port.bytesAvailable());
    return available == 0 ? 0 : checked(port.readBytes(buffer, Math.min(available, buffer.length)));
  }

  private int checked(int count) throws LinkException {
    if (count < 0) {
      throw PortFaults.lost(name);
    }
    return count;
  }

  @Override
  public void write(byte[] bytes) throws LinkException {
    if (port.writeBytes(bytes, bytes.length) != bytes.length) {
      throw new LinkException(Reason.LOST, name + " does not take the request; reopening it.");
    }
  }

  @Override
  public boolean footSwitchClosed() {
    return switch (footSwitch) {
      case NONE -> false;
      case CTS -> port.getCTS();
      case DSR -> port.getDSR();
    };
  }

  @Override
  public void close() {
    if (closed.compareAndSet(false, true)) {
      port.closePort();
    }
  }
}
