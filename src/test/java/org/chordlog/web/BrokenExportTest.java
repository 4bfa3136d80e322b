package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.javalin.Javalin;
import io.javalin.http.Handler;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.lang.reflect.InvocationHandler;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.lang.reflect.Proxy;
import java.net.InetAddress;
import java.net.Socket;
import java.net.SocketException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import org.chordlog.measure.Reading;
import org.chordlog.store.Kept;
import org.chordlog.store.Readings;
import org.chordlog.store.Some;
import org.chordlog.store.Store;
import org.chordlog.store.StoreException;
import org.chordlog.store.open.Stores;
import org.chordlog.web.http.Call;
import org.chordlog.web.http.Downloads;
import org.chordlog.web.http.Problems;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A file of which a part was sent when its making failed must not be taken for the whole. */
final class BrokenExportTest {
  /** What the file is made of. */
  private static final String PART = "<Part/>";

  private static final String REFUSAL = "The log names the cause";

  /** What arrived, a byte a character, and whether the connection broke. */
  private record Answer(String text, boolean cut) {}

  @TempDir Path directory;

  @ParameterizedTest
  @CsvSource({"identity, keep-alive", "identity, close", "gzip, keep-alive", "gzip, close"})
  void isCutWhereALaterPageOfReadingsCantBeRead(String coding, String connection) throws Exception {
    try (Store store = Stores.open(directory)) {
      Reading first = Kept.first(store);
      for (int i = 1; i < 1_500; i++) {
        var unused = store.readings().append(Some.reading("A", i, first.jobId(), first.setUpId()));
      }
      store.readings().append(Some.reading("A", 1_500, first.jobId(), first.setUpId())).join();
      Handler csv =
          new ExportRoutes(breaking(store), nothing(), nothing(), Clock.systemUTC())
              .routes()
              .get(0)
              .handler();
      String path = "/api/jobs/" + first.jobId() + "/readings.csv";
      assertCut(answer(path, csv, coding, connection));
    }
  }

  @Test
  void isCutWhereAPartWasSent() throws Exception {
    Handler file = ctx -> failAfter(new Call(ctx), 200_000);
    assertCut(answer("/file", file, "identity", "keep-alive"));
    assertCut(answer("/file", file, "identity", "close"));
  }

  @Test
  void isRefusedInWordsWhereNothingWasSent() throws Exception {
    Handler file = ctx -> failAfter(new Call(ctx), 100);
    String answer = answer("/file", file, "identity", "close").text();
    assertTrue(answer.startsWith("HTTP/1.1 500 "), answer);
    assertTrue(answer.contains(REFUSAL), answer);
    assertFalse(answer.contains("attachment"), answer);
    assertFalse(answer.contains(PART), answer);
  }

  private static void failAfter(Call call, int bytes) {
    Downloads.stream(
        call,
        "application/xml",
        "a.xml",
        out -> {
          out.write(PART.repeat(bytes / PART.length()).getBytes(StandardCharsets.UTF_8));
          throw unreadable();
        });
  }

  private static void assertCut(Answer answer) {
    assertTrue(answer.text().startsWith("HTTP/1.1 200 "), answer.text());
    assertTrue(answer.cut(), "looks whole");
    assertFalse(answer.text().contains(REFUSAL), "holds what is not of the file");
  }

  private static Answer answer(String path, Handler handler, String coding, String connection)
      throws IOException {
    Javalin app =
        Javalin.create(
            config -> {
              Problems.register(config.routes);
              config.routes.get(path.replaceFirst("jobs/\\d+", "jobs/{job}"), handler);
            });
    app.start("127.0.0.1", 0);
    try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), app.port())) {
      socket.setSoTimeout(20_000);
      String request =
          "GET %s HTTP/1.1\r\nHost: localhost\r\nAccept-Encoding: %s\r\nConnection: %s\r\n\r\n"
              .formatted(path, coding, connection);
      socket.getOutputStream().write(request.getBytes(StandardCharsets.ISO_8859_1));
      return all(socket.getInputStream());
    } finally {
      app.stop();
    }
  }

  private static Answer all(InputStream in) throws IOException {
    ByteArrayOutputStream all = new ByteArrayOutputStream();
    try {
      in.transferTo(all);
      return new Answer(all.toString(StandardCharsets.ISO_8859_1), false);
    } catch (SocketException e) {
      return new Answer(all.toString(StandardCharsets.ISO_8859_1), true);
    }
  }

  private static StoreException unreadable() {
    return new StoreException("can't read the database: disk I/O error", null);
  }

  @SuppressWarnings({"NullAway", "TypeParameterUnusedInFormals"})
  private static <T> T nothing() {
    return null;
  }

  /** The same store, of which all pages of readings but the first can't be read. */
  private static Store breaking(Store store) {
    Readings readings =
        made(
            Readings.class,
            (proxy, method, arguments) -> {
              if (method.getName().equals("ofJob") && (Long) arguments[1] > 0) {
                throw unreadable();
              }
              return call(store.readings(), method, arguments);
            });
    return made(
        Store.class,
        (proxy, method, arguments) ->
            method.getName().equals("readings") ? readings : call(store, method, arguments));
  }

  private static <T> T made(Class<T> type, InvocationHandler handler) {
    return type.cast(Proxy.newProxyInstance(type.getClassLoader(), new Class<?>[] {type}, handler));
  }

  private static Object call(Object of, Method method, Object[] arguments) throws Throwable {
    try {
      return method.invoke(of, arguments);
    } catch (InvocationTargetException e) {
      throw e.getCause();
    }
  }
}
