package org.chordlog.link;

import java.nio.file.Files;
import java.nio.file.Path;

/**
 * A serial port and how to open it. {@code port} says which: an absolute path (best a stable one,
 * as under {@code /dev/serial/by-id}), {@code serial:NUMBER} for the serial number of a USB
 * adapter, or {@code description:TEXT} for its description.
 */
public record SerialSettings(
    String port,
    int rate,
    int dataBits,
    Parity parity,
    StopBits stopBits,
    FlowControl flowControl,
    LineState dtr,
    LineState rts,
    boolean exclusive,
    FootSwitch footSwitch)
    implements LinkSettings {

  /** Parity bit. */
  public enum Parity {
    NONE,
    ODD,
    EVEN,
    MARK,
    SPACE
  }

  /** Stop bits. */
  public enum StopBits {
    ONE,
    ONE_AND_A_HALF,
    TWO
  }

  /** Flow control. */
  public enum FlowControl {
    NONE,
    RTS_CTS,
    DSR_DTR,
    XON_XOFF
  }

  /** What is done to a modem-control line at opening; some indicators are fed from one. */
  public enum LineState {
    ON,
    OFF
  }

  /** The line a foot switch is wired to. */
  public enum FootSwitch {
    NONE,
    CTS,
    DSR
  }

  /** 9600 8N1 without flow control, both lines on, exclusive, no foot switch. */
  public static SerialSettings of(String port) {
    return new SerialSettings(
        port,
        9600,
        8,
        Parity.NONE,
        StopBits.ONE,
        FlowControl.NONE,
        LineState.ON,
        LineState.ON,
        true,
        FootSwitch.NONE);
  }

  /** The same port at another rate and framing. */
  public SerialSettings with(int newRate, int newDataBits, Parity newParity, StopBits newStopBits) {
    return new SerialSettings(
        port,
        newRate,
        newDataBits,
        newParity,
        newStopBits,
        flowControl,
        dtr,
        rts,
        exclusive,
        footSwitch);
  }

  @Override
  public <T> T match(Cases<T> cases) {
    return cases.serial(this);
  }

  @Override
  public String target() {
    return port;
  }

  @Override
  public Link open() throws LinkException {
    try {
      return SerialOpener.open(this);
    } catch (LinkageError e) {
      throw SerialLibrary.notLoaded(e);
    }
  }

  @Override
  public boolean present() {
    return !port.startsWith("/") || Files.exists(Path.of(port));
  }

  @Override
  public boolean hasFootSwitch() {
    return footSwitch != FootSwitch.NONE;
  }

  /** Whether that text can name a port. */
  public static boolean namesPort(String port) {
    return port.matches("/.+|COM\\d+|(serial|description):.+");
  }
}
