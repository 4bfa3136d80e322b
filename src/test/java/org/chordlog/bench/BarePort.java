package org.chordlog.bench;

import static java.nio.charset.StandardCharsets.US_ASCII;

import com.fazecast.jSerialComm.SerialPort;
import java.io.BufferedReader;
import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.util.concurrent.atomic.AtomicLong;
import org.chordlog.simulator.PseudoTerminal;

/** A port read by jSerialComm alone, in one of two ways; counts lines until it is closed. */
final class BarePort implements AutoCloseable {
  /** How lines are taken from the port. */
  enum Way {
    /** Its input stream in a {@link BufferedReader}, the usual way. */
    READ_LINE,
    /** Large reads of which only the line ends are counted: no line is made of them. */
    BULK
  }

  private final SerialPort port;
  private final AtomicLong lines = new AtomicLong();
  private final Thread reader;
  private volatile boolean done;

  BarePort(PseudoTerminal terminal, Way way) throws IOException {
    port = SerialPort.getCommPort(terminal.path().toString());
    port.setComPortTimeouts(SerialPort.TIMEOUT_READ_SEMI_BLOCKING, 200, 0);
    if (!port.openPort()) {
      throw new IOException("not opened");
    }
    reader = new Thread(way == Way.BULK ? this::count : this::readLines, "bare-port");
    reader.start();
  }

  long lines() {
    return lines.get();
  }

  private void count() {
    byte[] buffer = new byte[16_384];
    while (!done) {
      int count = port.readBytes(buffer, buffer.length);
      long found = 0;
      for (int i = 0; i < count; i++) {
        found += buffer[i] == '\n' ? 1 : 0;
      }
      lines.addAndGet(found);
    }
  }

  private void readLines() {
    InputStream in = new Patient(port.getInputStreamWithSuppressedTimeoutExceptions());
    try (BufferedReader each = new BufferedReader(new InputStreamReader(in, US_ASCII))) {
      while (each.readLine() != null) {
        lines.incrementAndGet();
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Asks again where the port says 0 bytes after a time-out, which readers refuse. */
  private final class Patient extends FilterInputStream {
    Patient(InputStream in) {
      super(in);
    }

    @Override
    public int read(byte[] into, int from, int most) throws IOException {
      int count = 0;
      while (count == 0 && !done) {
        count = super.read(into, from, most);
      }
      return count == 0 ? -1 : count;
    }
  }

  @Override
  public void close() {
    done = true;
    try {
      reader.join();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    port.closePort();
  }
}
