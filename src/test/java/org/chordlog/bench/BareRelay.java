package org.chordlog.bench;

import static java.nio.charset.StandardCharsets.US_ASCII;

import com.fazecast.jSerialComm.SerialPort;
import java.io.IOException;
import java.io.PrintStream;
import java.util.ArrayList;
import java.util.List;

/**
 * The least that can be done with many ports: a thread each that reads with jSerialComm and passes
 * each line on at once to standard output, with the number of its port. Arguments: the ports.
 */
public final class BareRelay {
  private BareRelay() {}

  public static void main(String[] arguments) throws Exception {
    PrintStream out = new PrintStream(System.out, false, US_ASCII);
    List<Thread> readers = new ArrayList<>();
    for (int i = 0; i < arguments.length; i++) {
      int number = i;
      SerialPort port = SerialPort.getCommPort(arguments[i]);
      port.setComPortTimeouts(SerialPort.TIMEOUT_READ_SEMI_BLOCKING, 200, 0);
      if (!port.openPort()) {
        throw new IOException("not opened: " + arguments[i]);
      }
      readers.add(new Thread(() -> read(number, port, out)));
    }
    readers.forEach(Thread::start);
    out.println("open");
    out.flush();
    for (Thread reader : readers) {
      reader.join();
    }
  }

  private static void read(int number, SerialPort port, PrintStream out) {
    byte[] buffer = new byte[4_096];
    StringBuilder line = new StringBuilder();
    for (int count = port.readBytes(buffer, buffer.length); count >= 0; ) {
      for (int i = 0; i < count; i++) {
        if (buffer[i] == '\n') {
          out.println(number + " " + line);
          out.flush();
          line.setLength(0);
        } else if (buffer[i] != '\r') {
          line.append((char) buffer[i]);
        }
      }
      count = port.readBytes(buffer, buffer.length);
    }
  }
}
