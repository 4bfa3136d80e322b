package org.chordlog.forward;

import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;

/**
 * A process that measures and delivers until it is killed. Arguments: data directory, port of the
 * plant's database, its name.
 */
final class KilledEdge {
  private KilledEdge() {}

  public static void main(String[] arguments) {
    EdgeRig edge =
        new EdgeRig(
            Path.of(arguments[0]),
            TestPlant.EDGE,
            Integer.parseInt(arguments[1]),
            null,
            arguments[2]);
    edge.start();
    System.out.println("started");
    while (true) {
      edge.measure(100);
      System.out.println("measured " + edge.store().readings().lastId());
      LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(20));
    }
  }
}
