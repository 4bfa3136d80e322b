package org.chordlog.station;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.function.Consumer;
import org.chordlog.link.Backoff;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Check;
import org.chordlog.profile.LivePiece;
import org.chordlog.store.Store;

/**
 * All stations, each with a thread of its own; one never waits for another. Any thread may call.
 */
public final class Stations implements AutoCloseable {
  public static final int MOST = 64;

  private final StationContext around;
  private final Map<String, RunningStation> running = new LinkedHashMap<>();
  private final SplittableRandom seeds;

  /** Held by whoever adds, changes or removes a station; taken before the lock of this object. */
  private final Object changing = new Object();

  private final StandStill standStill;
  private boolean closed;

  public Stations(Store store, StationClock clock) {
    this(store, clock, System.nanoTime());
  }

  /** {@code seed} is for the jitter of the back-off. */
  Stations(Store store, StationClock clock, long seed) {
    around = new StationContext(store, clock, new Announcer(), new IncidentLog(store.incidents()));
    seeds = new SplittableRandom(seed);
    standStill = StandStill.watch(this::stoodStill);
  }

  /** Until now; each station missed what came meanwhile. */
  private void stoodStill(long micros) {
    long now = around.clock().wallMicros();
    all().forEach(each -> each.stoodStill(now - micros, now, around.incidents()));
  }

  /**
   * Announcements are handed over one after the other by the thread they come from: return at once,
   * and subscribe before the first station is added. Readings come in the order of their ids.
   */
  public void subscribe(Consumer<Announcement> listener) {
    around.announcer().subscribe(listener);
  }

  public void unsubscribe(Consumer<Announcement> listener) {
    around.announcer().unsubscribe(listener);
  }

  /** Starts a station; {@link BadInput} when its name is taken or there are {@value #MOST}. */
  public void add(StationSettings settings) {
    add(settings, StationKeeper.forThisRun());
  }

  /**
   * The same for a station that {@code keeper} keeps before it starts; what is refused is not
   * written.
   */
  public void add(StationSettings settings, StationKeeper keeper) {
    synchronized (changing) {
      refuseAnother(settings);
      keeper.add(settings);
      synchronized (this) {
        start(settings);
      }
    }
  }

  private synchronized void refuseAnother(StationSettings settings) {
    if (running.containsKey(settings.name())) {
      throw new BadInput("name", settings.name(), "is taken", "a name of its own");
    }
    refuseUsedPort(settings);
    Check.within("stations", running.size() + 1L, 0, MOST);
    refuseClosed();
  }

  private synchronized void refuseClosed() {
    if (closed) {
      throw new BadInput("service", "stopping", "can't take another station", "a running service");
    }
  }

  private synchronized void refuseUsedPort(StationSettings settings) {
    for (RunningStation each : running.values()) {
      StationSettings other = each.station().settings();
      StationSettings.PortUse shared = settings.portSharedWith(other);
      if (!other.name().equals(settings.name()) && shared != null) {
        throw new BadInput(
            shared.key(),
            shared.target(),
            "is the port of station " + other.name() + " already",
            "a port of its own");
      }
    }
  }

  private void start(StationSettings settings) {
    refuseClosed();
    new FirstBridge(around).mount(settings);
    running.put(
        settings.name(),
        RunningStation.start(settings, around, () -> Backoff.forPorts(seeds.split())));
  }

  /**
   * Stops the station of that name and starts it again with these settings, which {@code keeper}
   * keeps first: its job, place, zero and records stay. {@link BadInput} for a port of another
   * station, or for another machine than that of its open job.
   */
  public void replace(StationSettings settings, StationKeeper keeper) {
    synchronized (changing) {
      RunningStation before = find(settings.name());
      new ChangeOfStation(around.store(), before.station().status()).check(settings);
      refuseUsedPort(settings);
      keeper.replace(settings);
      stop(before);
      synchronized (this) {
        start(settings);
      }
    }
  }

  /** Stops the station of that name and removes it from the station file; its records stay. */
  public void remove(String name, StationKeeper keeper) {
    synchronized (changing) {
      RunningStation gone = find(name);
      keeper.remove(name);
      stop(gone);
      synchronized (this) {
        running.remove(name);
      }
    }
  }

  private static void stop(RunningStation station) {
    station.stop();
    station.awaitStop(System.nanoTime() + RunningStation.MOST_STOP_NANOS);
  }

  /** The operator's actions at a station. */
  public StationActions at(String name) {
    return find(name).actions();
  }

  /** Calibrating and checking a station on masters. */
  public MasterActions mastersAt(String name) {
    return find(name).masters();
  }

  public StationStatus status(String name) {
    return find(name).station().status();
  }

  /** The piece that runs through a station in a line now, as of half a second ago at most. */
  public Optional<LivePiece> runningPiece(String name) {
    return Optional.ofNullable(find(name).station().runningPiece());
  }

  public List<StationStatus> statuses() {
    return all().stream().map(each -> each.station().status()).toList();
  }

  public List<StationSettings> settings() {
    return all().stream().map(each -> each.station().settings()).toList();
  }

  private synchronized List<RunningStation> all() {
    return new ArrayList<>(running.values());
  }

  private synchronized RunningStation find(String name) {
    RunningStation found = running.get(name);
    if (found == null) {
      throw new BadInput("station", name, "is not known", String.join(", ", running.keySet()));
    }
    return found;
  }

  /** Stops all within two seconds; the store must still be open. */
  @Override
  public void close() {
    standStill.close();
    synchronized (this) {
      closed = true;
    }
    List<RunningStation> all = all();
    all.forEach(RunningStation::stop);
    long deadline = System.nanoTime() + RunningStation.MOST_STOP_NANOS;
    all.forEach(each -> each.awaitStop(deadline));
    around.incidents().close();
  }
}
