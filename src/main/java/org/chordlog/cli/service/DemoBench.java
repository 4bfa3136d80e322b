package org.chordlog.cli.service;

import java.net.URI;
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
  private @Nullable DemoStudy study;

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

  /** Where the pages are that the operator looks at, and the people of a study. */
  void servedAt(int port) {
    if (operator != null) {
      operator.servedAt(port);
    }
    study = new DemoStudy(simulator::study, speed, URI.create("http://127.0.0.1:" + port));
    study.work();
  }

  @Override
  public void close() {
    if (study != null) {
      study.close();
    }
    if (operator != null) {
      operator.close();
    }
  }
}
