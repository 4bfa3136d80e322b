package org.chordlog.simulator;

import static java.nio.charset.StandardCharsets.US_ASCII;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fazecast.jSerialComm.SerialPort;
import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class PseudoTerminalTest {
  private static final byte[] LINE = "+01.234\r\n".getBytes(US_ASCII);

  @Test
  void bytesArriveAsSentWithoutEchoOrChangeOfLineEnds() throws IOException {
    try (PseudoTerminal device = PseudoTerminal.open();
        RandomAccessFile reader = new RandomAccessFile(device.path().toFile(), "rw")) {
      assertEquals(LINE.length, device.write(LINE));
      byte[] got = new byte[LINE.length];
      reader.readFully(got);
      assertArrayEquals(LINE, got);
      assertEquals(0, device.read(new byte[16]), "nothing is echoed");
    }
  }

  @Test
  void thoseOpenedAtTheSameMomentAreDifferentDevices() throws Exception {
    for (int round = 0; round < 200; round++) {
      assertEquals(8, openedAtOnce(8));
    }
  }

  /** How many devices these are. */
  private static long openedAtOnce(int count) throws Exception {
    ExecutorService threads = Executors.newFixedThreadPool(count);
    List<PseudoTerminal> devices = new ArrayList<>();
    try {
      Callable<PseudoTerminal> open = PseudoTerminal::open;
      for (var each : threads.invokeAll(Collections.nCopies(count, open))) {
        devices.add(each.get());
      }
      return devices.stream().map(PseudoTerminal::path).distinct().count();
    } finally {
      devices.forEach(PseudoTerminal::close);
      threads.shutdownNow();
    }
  }

  @Test
  void requestsOfTheOtherSideCanBeRead() throws IOException {
    try (PseudoTerminal device = PseudoTerminal.open();
        RandomAccessFile master = new RandomAccessFile(device.path().toFile(), "rw")) {
      master.write("?\r".getBytes(US_ASCII));
      byte[] buffer = new byte[16];
      int n = device.read(buffer);
      assertEquals("?\r", new String(Arrays.copyOf(buffer, n), US_ASCII));
    }
  }

  @Test
  void whatIsSentWhileNobodyHasItOpenIsLost() throws IOException {
    try (PseudoTerminal device = PseudoTerminal.open()) {
      assertFalse(device.connected());
      assertEquals(0, device.write(LINE));
      assertEquals(-1, device.read(new byte[16]));
      try (RandomAccessFile reader = new RandomAccessFile(device.path().toFile(), "rw")) {
        assertTrue(device.connected());
        device.write("A".getBytes(US_ASCII));
        assertEquals('A', reader.read(), "the older line is not kept for later");
      }
      assertFalse(device.connected());
      assertEquals(0, device.write(LINE));
    }
  }

  @Test
  void aReaderThatDoesNotReadLosesBytesAndNeverBlocksTheSender() throws IOException {
    try (PseudoTerminal device = PseudoTerminal.open();
        RandomAccessFile reader = new RandomAccessFile(device.path().toFile(), "rw")) {
      assertTrue(reader.getFD().valid());
      int sent = 0;
      int taken = 0;
      for (int i = 0; i < 20_000; i++) {
        sent += LINE.length;
        taken += device.write(LINE);
      }
      assertTrue(taken > 0 && taken < sent, taken + " of " + sent);
    }
  }

  @Test
  void closingUnplugsAndTakesTheLinkAway(@TempDir Path run) throws IOException {
    Path link = run.resolve("indicator");
    PseudoTerminal first = PseudoTerminal.open();
    first.publish(link);
    try (PseudoTerminal second = PseudoTerminal.open()) {
      second.publish(link);
      assertEquals(second.path(), Files.readSymbolicLink(link));
      first.close();
      assertTrue(Files.isSymbolicLink(link), "it belongs to the second by now");
      assertEquals(0, first.write(LINE));
      assertEquals(-1, first.read(new byte[1]));
    }
    assertFalse(Files.exists(link, java.nio.file.LinkOption.NOFOLLOW_LINKS));
  }

  @Test
  void theRateThatTheServiceSetsCanBeRead() throws IOException {
    try (PseudoTerminal device = PseudoTerminal.open()) {
      for (int rate : new int[] {4800, 9600, 57600, 115200}) {
        SerialPort port = SerialPort.getCommPort(device.path().toString());
        port.setBaudRate(rate);
        assertTrue(port.openPort());
        try {
          assertEquals(rate, device.baudRate());
        } finally {
          port.closePort();
        }
      }
    }
  }
}
