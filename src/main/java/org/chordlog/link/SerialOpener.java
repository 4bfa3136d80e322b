package org.chordlog.link;

import com.fazecast.jSerialComm.SerialPort;
import com.fazecast.jSerialComm.SerialPortInvalidPortException;
import java.nio.file.Path;
import org.chordlog.link.LinkException.Reason;
import org.chordlog.link.SerialSettings.FlowControl;
import org.chordlog.link.SerialSettings.LineState;

/**
 * Opens a serial port with a fresh object each time, and never another device than the one asked.
 */
final class SerialOpener {
  /** The library counts time-outs in steps of 100 ms. */
  static final int TICK_MILLIS = 200;

  private SerialOpener() {}

  static SerialLink open(SerialSettings settings) throws LinkException {
    Path device = PortFinder.resolve(settings.port());
    SerialPort port = portAt(device, settings.port());
    configure(port, settings);
    if (!port.openPort()) {
      LinkException fault =
          PortFaults.opening(settings.port(), device, port.getLastErrorCode(), settings.rate());
      port.closePort();
      throw fault;
    }
    port.flushIOBuffers();
    return new SerialLink(port, settings.port(), settings.footSwitch());
  }

  /** The library falls back to another device of the same last name: refuse that. */
  private static SerialPort portAt(Path device, String asked) throws LinkException {
    try {
      SerialPort port = SerialPort.getCommPort(device.toString());
      if (device.toString().equals(port.getSystemPortPath()) || !device.startsWith("/")) {
        return port;
      }
      throw PortFaults.missing(asked);
    } catch (SerialPortInvalidPortException e) {
      throw new LinkException(Reason.NOT_A_PORT, asked + " is not a serial port.");
    }
  }

  private static void configure(SerialPort port, SerialSettings settings) {
    port.disableRs485ModeControl();
    port.setComPortParameters(
        settings.rate(), settings.dataBits(), stopBits(settings), parity(settings));
    port.setFlowControl(flowControl(settings.flowControl()));
    port.setComPortTimeouts(SerialPort.TIMEOUT_READ_SEMI_BLOCKING, TICK_MILLIS, 0);
    setLines(port, settings);
    if (!settings.exclusive()) {
      port.disableExclusiveLock();
    }
  }

  /** Before opening, so that the lines do not toggle: that resets some devices. */
  private static void setLines(SerialPort port, SerialSettings settings) {
    if (settings.dtr() == LineState.OFF) {
      port.clearDTR();
    } else {
      port.setDTR();
    }
    if (settings.rts() == LineState.OFF) {
      port.clearRTS();
    } else {
      port.setRTS();
    }
  }

  private static int stopBits(SerialSettings settings) {
    return switch (settings.stopBits()) {
      case ONE -> SerialPort.ONE_STOP_BIT;
      case ONE_AND_A_HALF -> SerialPort.ONE_POINT_FIVE_STOP_BITS;
      case TWO -> SerialPort.TWO_STOP_BITS;
    };
  }

  private static int parity(SerialSettings settings) {
    return switch (settings.parity()) {
      case NONE -> SerialPort.NO_PARITY;
      case ODD -> SerialPort.ODD_PARITY;
      case EVEN -> SerialPort.EVEN_PARITY;
      case MARK -> SerialPort.MARK_PARITY;
      case SPACE -> SerialPort.SPACE_PARITY;
    };
  }

  private static int flowControl(FlowControl flow) {
    return switch (flow) {
      case NONE -> SerialPort.FLOW_CONTROL_DISABLED;
      case RTS_CTS -> SerialPort.FLOW_CONTROL_RTS_ENABLED | SerialPort.FLOW_CONTROL_CTS_ENABLED;
      case DSR_DTR -> SerialPort.FLOW_CONTROL_DSR_ENABLED | SerialPort.FLOW_CONTROL_DTR_ENABLED;
      case XON_XOFF ->
          SerialPort.FLOW_CONTROL_XONXOFF_IN_ENABLED | SerialPort.FLOW_CONTROL_XONXOFF_OUT_ENABLED;
    };
  }
}
