package org.chordlog.cli.service;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import org.chordlog.harness.SteppingClock;
import org.chordlog.station.StationFile;
import org.chordlog.station.StationKeeper;
import org.chordlog.store.StoreSettings;
import org.chordlog.web.http.WebSettings;

/**
 * The service as {@code serve} composes it, but its wall clock is set by lines on standard input:
 * each a step in seconds, forward or back. Arguments: data directory, station file.
 */
public final class SteppedService {
  private SteppedService() {}

  public static void main(String[] arguments) throws IOException {
    SteppingClock clock = new SteppingClock();
    Service service =
        Service.start(
            Path.of(arguments[0]),
            StoreSettings.USUAL,
            StationFile.read(Path.of(arguments[1])),
            WebSettings.onLoopback(0),
            StationKeeper.forThisRun(),
            clock);
    Runtime.getRuntime().addShutdownHook(new Thread(service::close));
    System.out.println("{\"address\":\"http://127.0.0.1:" + service.port() + "/\"}");
    BufferedReader in =
        new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8));
    for (String line = in.readLine(); line != null; line = in.readLine()) {
      clock.step(Duration.ofSeconds(Long.parseLong(line)));
    }
  }
}
