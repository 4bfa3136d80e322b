package org.chordlog.bench;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.concurrent.locks.LockSupport;
import org.chordlog.harness.Children;
import org.chordlog.harness.Indicators;
import org.chordlog.harness.ProcessFigures;
import org.chordlog.harness.Rig;
import org.chordlog.harness.ServiceProcess;

/** {@link BareRelay} on the same indicators: its processor time, and how soon a line comes out. */
record RelayRun(double cores, Latencies.Percentiles latency, Latencies.Percentiles senderLate) {
  private static final double WARM_SECONDS = 5;
  private static final double SECONDS = 15;

  static RelayRun of(Rig rig, int stations, double perSecond) throws Exception {
    try (Indicators indicators = new Indicators(rig, stations, perSecond, 1, 1)) {
      List<String> command = ServiceProcess.java(System.getProperty("java.class.path"), "-Xmx128m");
      command.add(BareRelay.class.getName());
      for (int i = 0; i < stations; i++) {
        command.add(rig.link(i).toRealPath().toString());
      }
      Process process =
          Children.start(
              new ProcessBuilder(command).redirectError(ProcessBuilder.Redirect.INHERIT));
      try {
        return measure(process, indicators);
      } finally {
        process.destroyForcibly().waitFor();
      }
    }
  }

  private static RelayRun measure(Process process, Indicators indicators) throws IOException {
    BufferedReader lines =
        new BufferedReader(
            new InputStreamReader(process.getInputStream(), StandardCharsets.US_ASCII));
    lines.readLine();
    Latencies latencies = new Latencies(indicators);
    Thread listener = new Thread(() -> listen(lines, latencies), "relay-notes");
    listener.setDaemon(true);
    listener.start();
    indicators.start();
    pause(WARM_SECONDS);
    latencies.restart();
    double before = ProcessFigures.cpuSeconds(process.pid());
    long start = System.nanoTime();
    pause(SECONDS);
    double cpu = ProcessFigures.cpuSeconds(process.pid()) - before;
    return new RelayRun(
        cpu * 1e9 / (System.nanoTime() - start), latencies.live(), latencies.senderLate());
  }

  private static void listen(BufferedReader lines, Latencies latencies) {
    try {
      for (String line = lines.readLine(); line != null; line = lines.readLine()) {
        int space = line.indexOf(' ');
        latencies.hearRelayed(
            Integer.parseInt(line.substring(0, space)), Double.parseDouble(line.substring(space)));
      }
    } catch (IOException e) {
      if (!String.valueOf(e.getMessage()).contains("closed")) {
        throw new UncheckedIOException(e);
      }
    }
  }

  private static void pause(double seconds) {
    LockSupport.parkNanos(Math.round(seconds * 1e9));
  }
}
