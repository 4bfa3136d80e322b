package org.chordlog.cli.service;

import java.util.function.Consumer;
import org.chordlog.simulator.Scenario;
import org.chordlog.station.StationFile;
import org.chordlog.station.Stations;
import org.jspecify.annotations.Nullable;

/** The station of the demo on the simulator's device, and the operator who works at it. */
final class DemoBench implements Consumer<Stations>, AutoCloseable {
  private final Scenario scenario;
  private final DemoSimulator simulator;
  private final double speed;
  private final DemoMoves moves;
  private @Nullable DemoOperator operator;

  DemoBench(Scenario scenario, DemoSimulator simulator, double speed, DemoMoves moves) {
    this.scenario = scenario;
    this.simulator = simulator;
    this.speed = speed;
    this.moves = moves;
  }

  /** Waits until the simulator says where its device is. */
  @Override
  public void accept(Stations stations) {
    operator = new DemoOperator(scenario, stations, simulator, moves);
    operator.work();
    String file = DemoStation.yaml(scenario, simulator.address(), speed);
    StationFile.parse(file, "demo").forEach(stations::add);
  }

  /** Where the pages are that the operator looks at. */
  void servedAt(int port) {
    if (operator != null) {
      operator.servedAt(port);
    }
  }

  @Override
  public void close() {
    if (operator != null) {
      operator.close();
    }
  }
}
