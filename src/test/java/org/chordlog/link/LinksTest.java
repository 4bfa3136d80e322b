package org.chordlog.link;

import static java.nio.charset.StandardCharsets.US_ASCII;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.chordlog.Await;
import org.chordlog.link.LinkException.Reason;
import org.chordlog.simulator.PseudoTerminal;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Each kind of link against the real thing. */
@SuppressWarnings("try") // closed early: that is what is tested
final class LinksTest {
  private static final byte[] LINE = "+01.234\r\n".getBytes(US_ASCII);

  @TempDir private Path directory;

  private static byte[] read(Link link, int count) throws Exception {
    ByteArrayOutputStream all = new ByteArrayOutputStream();
    byte[] buffer = new byte[64];
    Await.until(
        () -> {
          all.write(buffer, 0, link.read(buffer));
          return all.size() >= count;
        });
    return all.toByteArray();
  }

  private static LinkException refused(LinkSettings settings) {
    return assertThrows(LinkException.class, () -> settings.open().close());
  }

  @Test
  void serialReadsWritesAndNoticesTheLoss() throws Exception {
    try (PseudoTerminal device = PseudoTerminal.open()) {
      try (Link link = SerialSettings.of(device.path().toString()).open()) {
        assertEquals(0, link.readAvailable(new byte[8]));
        device.write(LINE);
        assertArrayEquals(LINE, read(link, LINE.length));
        link.write(new byte[] {'?'});
        byte[] asked = new byte[8];
        Await.until(() -> device.read(asked) == 1);
        assertEquals('?', asked[0]);
        device.close();
        LinkException lost = assertThrows(LinkException.class, () -> link.read(new byte[8]));
        assertEquals(Reason.LOST, lost.reason());
        assertThrows(LinkException.class, () -> link.readAvailable(new byte[8]));
      }
    }
  }

  @Test
  void whatWasSentBeforeOpeningIsDropped() throws Exception {
    try (PseudoTerminal device = PseudoTerminal.open()) {
      try (Link link = SerialSettings.of(device.path().toString()).open()) {
        device.write("old\r\n".getBytes(US_ASCII));
      }
      try (Link link = SerialSettings.of(device.path().toString()).open()) {
        device.write(LINE);
        assertArrayEquals(LINE, read(link, LINE.length));
      }
    }
  }

  @Test
  void theRateIsSetOnTheDevice() throws Exception {
    try (PseudoTerminal device = PseudoTerminal.open();
        Link link =
            SerialSettings.of(device.path().toString())
                .with(4_800, 7, SerialSettings.Parity.EVEN, SerialSettings.StopBits.TWO)
                .open()) {
      assertEquals(0, link.readAvailable(new byte[8]));
      assertEquals(4_800, device.baudRate());
    }
  }

  @Test
  void aMissingPortIsNeverAnotherOfTheSameLastName() throws Exception {
    LinkException missing = refused(SerialSettings.of(directory.resolve("null").toString()));
    assertEquals(Reason.MISSING, missing.reason());
    Path link = directory.resolve("link");
    Files.createSymbolicLink(link, Path.of("/dev/null"));
    assertEquals(Reason.NOT_A_PORT, refused(SerialSettings.of(link.toString())).reason());
    assertEquals(Reason.MISSING, refused(SerialSettings.of("serial:no-such-number")).reason());
    assertEquals(Reason.MISSING, refused(SerialSettings.of("description:no such")).reason());
  }

  @Test
  void aPortInUseSaysSo() throws Exception {
    try (PseudoTerminal device = PseudoTerminal.open();
        Link first = SerialSettings.of(device.path().toString()).open()) {
      assertEquals(0, first.readAvailable(new byte[8]));
      LinkException busy = refused(SerialSettings.of(device.path().toString()));
      assertEquals(Reason.BUSY, busy.reason(), busy.getMessage());
    }
  }

  @Test
  void errorNumbersBecomeSentencesThatHelp() {
    Path device = Path.of("/dev/null");
    assertEquals(
        Reason.MISSING, PortFaults.opening("p", Path.of("/dev/nothing"), 2, 9_600).reason());
    assertEquals(Reason.BUSY, PortFaults.opening("p", device, 11, 9_600).reason());
    assertEquals(Reason.BUSY, PortFaults.opening("p", device, 16, 9_600).reason());
    assertEquals(Reason.NOT_A_PORT, PortFaults.opening("p", device, 25, 9_600).reason());
    assertEquals(Reason.LOST, PortFaults.opening("p", device, 5, 9_600).reason());
    LinkException denied = PortFaults.opening("p", device, 13, 9_600);
    assertEquals(Reason.NO_PERMISSION, denied.reason());
    assertTrue(String.valueOf(denied.getMessage()).contains("group root"), denied.toString());
  }

  @Test
  void tcpReadsWritesAndNoticesTheEnd() throws Exception {
    try (ServerSocket server = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      TcpSettings settings = new TcpSettings("127.0.0.1", server.getLocalPort());
      try (Link link = settings.open();
          Socket far = server.accept()) {
        assertEquals(0, link.read(new byte[8]));
        far.getOutputStream().write(LINE);
        assertArrayEquals(LINE, read(link, LINE.length));
        link.write(new byte[] {'?'});
        assertEquals('?', far.getInputStream().read());
        far.close();
        assertEquals(
            Reason.LOST, assertThrows(LinkException.class, () -> link.read(new byte[8])).reason());
      }
      server.close();
      assertEquals(Reason.REFUSED, refused(settings).reason());
    }
  }

  @Test
  void aRecordingPlaysWhatWasRecordedAndEnds() throws Exception {
    Path file = recording(List.of(Recording.line(0, LINE, 9), Recording.line(900_000, LINE, 4)));
    try (Link link = new ReplaySettings(file, 0).open()) {
      assertArrayEquals(LINE, read(link, 9));
      assertEquals(4, link.read(new byte[64]));
      assertEquals(
          Reason.ENDED, assertThrows(LinkException.class, () -> link.read(new byte[8])).reason());
    }
  }

  @Test
  void aRecordingKeepsItsTiming() throws Exception {
    Path file = recording(List.of(Recording.line(0, LINE, 9), Recording.line(400_000, LINE, 9)));
    long start = System.nanoTime();
    try (Link link = new ReplaySettings(file, 2).open()) {
      assertEquals(18, read(link, 18).length);
    }
    assertTrue(System.nanoTime() - start >= 200_000_000, "never before its time");
  }

  @Test
  void aDamagedRecordingIsRefusedByLine() throws Exception {
    Path file = recording(List.of("# a remark", Recording.line(0, LINE, 9), "5 2g"));
    try (Link link = new ReplaySettings(file, 0).open()) {
      assertEquals(9, link.read(new byte[64]));
      LinkException bad = assertThrows(LinkException.class, () -> link.read(new byte[64]));
      assertTrue(String.valueOf(bad.getMessage()).startsWith("Line 3"), bad.toString());
    }
  }

  private Path recording(List<String> lines) throws IOException {
    return Files.write(directory.resolve("recording.txt"), lines);
  }
}
