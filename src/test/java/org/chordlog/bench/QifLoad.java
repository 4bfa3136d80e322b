package org.chordlog.bench;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import org.chordlog.monitor.Monitor;
import org.chordlog.shop.Shop;
import org.chordlog.store.Store;
import org.chordlog.store.open.Stores;
import org.chordlog.web.JobQif;

/**
 * Time, size and memory of the QIF document of a stored job: {@code QifLoad DIR FILE [READINGS]},
 * 100,000 readings of an invented job unless told otherwise; DIR is filled if it has no job. Run
 * once to fill and again with a small {@code -Xmx} to see that it does not grow with the job.
 */
public final class QifLoad {
  private QifLoad() {}

  public static void main(String[] arguments) throws IOException {
    Path file = Path.of(arguments[1]);
    int readings = arguments.length > 2 ? Integer.parseInt(arguments[2]) : 100_000;
    try (Store store = Stores.open(Path.of(arguments[0]));
        Monitor monitor = new Monitor(store)) {
      if (store.jobs().find(1).isEmpty()) {
        Shop.open(store, Shop.END_MICROS, "bench-1").large(readings);
      }
      while (monitor.standing(1).behind() > 0) {
        Thread.onSpinWait();
      }
      long start = System.nanoTime();
      try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(file), 1 << 16)) {
        new JobQif(store, monitor).write(1, out);
      }
      double seconds = (System.nanoTime() - start) / 1e9;
      tell(store.readings().countOfJob(1), seconds, Files.size(file));
    }
  }

  private static void tell(long readings, double seconds, long bytes) {
    Runtime runtime = Runtime.getRuntime();
    System.out.printf(
        "%d readings: %.1f s, %.1f MB, heap used %.1f MB of at most %.0f MB%n",
        readings,
        seconds,
        bytes / 1e6,
        (runtime.totalMemory() - runtime.freeMemory()) / 1e6,
        runtime.maxMemory() / 1e6);
  }
}
