package org.chordlog.station;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Random;
import java.util.concurrent.CopyOnWriteArrayList;
import org.chordlog.Await;
import org.chordlog.link.Backoff;
import org.chordlog.link.LinkException;
import org.chordlog.link.TcpSettings;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** A fault of the program at something that came from a device on the network. */
final class FaultyStationTest {
  private static final long MILLI = 1_000_000;
  private final FailsAtFirst events = new FailsAtFirst();
  private final Backoff soon = new Backoff(MILLI, MILLI, MILLI, new Random(1));

  @Test
  void itIsToldAndTheStationGoesOn() throws Exception {
    try (ServerSocket device = new ServerSocket(0, 5, InetAddress.getLoopbackAddress())) {
      TcpSettings link = new TcpSettings("127.0.0.1", device.getLocalPort());
      LinkLoop loop =
          new LinkLoop(link, soon, new Mailbox("A"), StationClock.system(), 0, false, events);
      LinkThread thread = LinkThread.start(loop, "A", "station-A");
      try (Socket first = sendsTo(device);
          Socket again = sendsTo(device)) {
        Await.until(() -> events.told.contains("bytes"));
        assertTrue(first.isBound() && again.isBound());
      }
      thread.stop();
      thread.awaitStop(System.nanoTime() + RunningStation.MOST_STOP_NANOS);
    }
    String fault = events.told.get(0);
    assertTrue(fault.startsWith("The program has a fault at what came from 127.0.0.1:"), fault);
    assertEquals("bytes", events.told.get(1));
    assertTrue(events.told.contains("stopped"));
  }

  private static Socket sendsTo(ServerSocket device) throws IOException {
    device.setSoTimeout(20_000);
    Socket socket = device.accept();
    socket.getOutputStream().write("+1.000\r\n".getBytes(StandardCharsets.US_ASCII));
    return socket;
  }

  /** Of the station's thread, except what was told. */
  private static final class FailsAtFirst implements LinkLoop.Events {
    private final List<String> told = new CopyOnWriteArrayList<>();
    private boolean failed;

    @Override
    public void bytes(byte[] buffer, int count, long nanos) {
      if (!failed) {
        failed = true;
        throw new IllegalStateException("a fault");
      }
      told.add("bytes");
    }

    @Override
    public void lost(LinkException why, long stoodNanos) {
      told.add(String.valueOf(why.getMessage()));
    }

    @Override
    public void stopped() {
      told.add("stopped");
    }

    @Override
    public void opened() {
      // nothing to do
    }

    @Override
    public void nothing(long nanos) {
      // nothing to do
    }

    @Override
    public byte @Nullable [] request(long nanos) {
      return null;
    }

    @Override
    public void footSwitch(boolean closed, long nanos) {
      // nothing to do
    }
  }
}
