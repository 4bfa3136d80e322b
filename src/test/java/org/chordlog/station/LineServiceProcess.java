package org.chordlog.station;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.chordlog.store.Store;
import org.chordlog.store.open.Stores;

/** Runs the station of a station file on a store until the process is killed; tells what comes. */
final class LineServiceProcess {
  private LineServiceProcess() {}

  /** Data directory, station file. */
  public static void main(String[] arguments) throws Exception {
    Store store = Stores.open(Path.of(arguments[0]));
    Stations stations = new Stations(store, StationClock.system());
    stations.subscribe(LineServiceProcess::tell);
    String yaml = Files.readString(Path.of(arguments[1]));
    StationFile.parse(yaml, arguments[1]).forEach(stations::add);
    boolean running = false;
    while (true) {
      boolean now = stations.runningPiece(LineRig.STATION).isPresent();
      if (now && !running) {
        System.out.println("running");
      }
      running = now;
      if (new CountDownLatch(1).await(5, TimeUnit.MILLISECONDS)) {
        return;
      }
    }
  }

  private static void tell(Announcement heard) {
    if (heard instanceof Announcement.Taken taken) {
      System.out.println("taken " + taken.reading().piece());
    }
  }
}
