package org.chordlog.cli.service;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.concurrent.atomic.AtomicLong;
import org.chordlog.station.StationClock;
import org.chordlog.station.StationFile;
import org.chordlog.store.StoreSettings;
import org.chordlog.web.http.WebSettings;

/**
 * The service as {@code serve} composes it, but its wall clock is set by lines on standard input:
 * each a step in seconds, forward or back. Arguments: data directory, station file.
 */
public final class SteppedService {
  private static final long MICROS = 1_000_000;

  private SteppedService() {}

  public static void main(String[] arguments) throws IOException {
    AtomicLong offsetMicros = new AtomicLong();
    Service service =
        Service.start(
            Path.of(arguments[0]),
            StoreSettings.USUAL,
            StationFile.read(Path.of(arguments[1])),
            WebSettings.onLoopback(0),
            added -> {},
            stepped(offsetMicros));
    Runtime.getRuntime().addShutdownHook(new Thread(service::close));
    System.out.println("{\"address\":\"http://127.0.0.1:" + service.port() + "/\"}");
    BufferedReader in =
        new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8));
    for (String line = in.readLine(); line != null; line = in.readLine()) {
      offsetMicros.addAndGet(Long.parseLong(line) * MICROS);
    }
  }

  private static StationClock stepped(AtomicLong offsetMicros) {
    StationClock real = StationClock.system();
    return new StationClock() {
      @Override
      public long wallMicros() {
        return real.wallMicros() + offsetMicros.get();
      }

      @Override
      public long monotonicNanos() {
        return real.monotonicNanos();
      }
    };
  }
}
