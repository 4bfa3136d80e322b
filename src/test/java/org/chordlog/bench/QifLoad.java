package org.chordlog.bench;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import org.chordlog.report.qif.QifJobs;
import org.chordlog.report.qif.QifWriter;

/**
 * Time, size and memory of a QIF document: {@code QifLoad FILE [READINGS]}, 100,000 readings unless
 * told otherwise. Run with a small {@code -Xmx} to see that it does not grow with the job.
 */
public final class QifLoad {
  private QifLoad() {}

  public static void main(String[] arguments) throws IOException {
    Path file = Path.of(arguments[0]);
    int readings = arguments.length > 1 ? Integer.parseInt(arguments[1]) : 100_000;
    long start = System.nanoTime();
    try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(file), 1 << 16)) {
      QifWriter.write(QifJobs.large(readings), out);
    }
    double seconds = (System.nanoTime() - start) / 1e9;
    Runtime runtime = Runtime.getRuntime();
    System.out.printf(
        "%d readings: %.1f s, %.1f MB, heap used %.1f MB of at most %.0f MB%n",
        readings,
        seconds,
        Files.size(file) / 1e6,
        (runtime.totalMemory() - runtime.freeMemory()) / 1e6,
        runtime.maxMemory() / 1e6);
  }
}
