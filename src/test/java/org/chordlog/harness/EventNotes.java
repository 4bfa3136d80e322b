package org.chordlog.harness;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.net.Socket;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.util.function.Consumer;
import org.chordlog.Patience;

/** A client of the event stream: hands over each event as it comes, on a thread of its own. */
public final class EventNotes implements AutoCloseable {
  /** One event as it came, with the time at which its last byte was read. */
  public record Event(String name, String id, String data, long nanos) {}

  private final Socket socket;
  private final Thread reader;

  private EventNotes(Socket socket, Consumer<Event> consumer) {
    this.socket = socket;
    this.reader = new Thread(() -> read(consumer), "event-notes");
    reader.setDaemon(true);
  }

  /** {@code query} such as {@code ?lastEventId=7}. */
  public static EventNotes listen(URI address, String query, Consumer<Event> consumer)
      throws IOException {
    EventNotes notes = new EventNotes(request(address, query), consumer);
    notes.reader.start();
    return notes;
  }

  /** A client that asks for all events and never reads one. */
  public static Socket neverReading(URI address) throws IOException {
    Socket socket = new Socket();
    socket.setReceiveBufferSize(4_096);
    socket.connect(new java.net.InetSocketAddress(address.getHost(), address.getPort()));
    ask(socket, address, "?liveMillis=50");
    return socket;
  }

  private static Socket request(URI address, String query) throws IOException {
    Socket socket = new Socket(address.getHost(), address.getPort());
    ask(socket, address, query);
    return socket;
  }

  /** HTTP/1.0, so that the answer comes without chunks. */
  private static void ask(Socket socket, URI address, String query) throws IOException {
    String head = "GET /api/events" + query + " HTTP/1.0\r\nHost: " + address.getAuthority();
    socket.getOutputStream().write((head + "\r\n\r\n").getBytes(StandardCharsets.US_ASCII));
  }

  private void read(Consumer<Event> consumer) {
    try (BufferedReader lines =
        new BufferedReader(
            new InputStreamReader(socket.getInputStream(), StandardCharsets.UTF_8))) {
      String id = "";
      String name = "";
      String data = "";
      for (String line = lines.readLine(); line != null; line = lines.readLine()) {
        if (line.startsWith("id: ")) {
          id = line.substring(4).split("-", 2)[0]; // without the epoch
        } else if (line.startsWith("event: ")) {
          name = line.substring(7);
        } else if (line.startsWith("data: ")) {
          data = line.substring(6);
        } else if (line.isEmpty() && !data.isEmpty()) {
          consumer.accept(new Event(name, id, data, System.nanoTime()));
          id = "";
          data = "";
        }
      }
    } catch (IOException e) {
      // The service was killed, or this client closed.
    }
  }

  /** Until the stream has ended and all that came was handed over. */
  public void awaitEnd() throws InterruptedException {
    reader.join(Patience.now().toMillis());
    if (reader.isAlive()) {
      throw new AssertionError("the stream does not end");
    }
  }

  @Override
  public void close() {
    try {
      socket.close();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
