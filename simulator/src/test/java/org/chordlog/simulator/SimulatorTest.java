package org.chordlog.simulator;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.FileReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

@Timeout(30)
final class SimulatorTest {
  private static Thread play(Simulator simulator) {
    Thread thread =
        new Thread(
            () -> {
              try {
                simulator.run();
              } catch (IOException | InterruptedException e) {
                throw new IllegalStateException(e);
              }
            });
    thread.start();
    return thread;
  }

  @Test
  void playsTheScenarioAsSignedDecimalLinesOnALink(@TempDir Path run) throws Exception {
    Scenario scenario = ScenarioFile.read(ScenarioFile.DEMO);
    List<Contact> truth = Collections.synchronizedList(new ArrayList<>());
    Path link = run.resolve("indicator");
    try (Simulator simulator = Simulator.onTerminal(scenario, 100, 1, link, truth::add)) {
      assertEquals(link.toString(), simulator.address());
      Thread thread = play(simulator);
      List<Double> values = new ArrayList<>();
      try (BufferedReader in =
          new BufferedReader(new FileReader(link.toFile(), StandardCharsets.US_ASCII))) {
        in.readLine();
        while (values.size() < 400) {
          String line = in.readLine();
          assertTrue(line.matches("[+-]\\d\\d\\.\\d{3}|"), line);
          if (!line.isEmpty()) {
            values.add(Double.valueOf(line));
          }
        }
      }
      simulator.stop();
      thread.join();
      assertEquals(-5 + 0.417, Collections.min(values), 0.003, "free air");
      double seated = truth.get(1).seatedDepthMm() + 0.417;
      assertTrue(values.stream().anyMatch(v -> Math.abs(v - seated) < 0.0011), "on piece 1");
    }
    assertEquals(0, truth.get(0).piece(), "the flat comes first");
    assertEquals(1, truth.get(1).piece());
  }

  @Test
  void playsOnTcpWhereThereIsNoPseudoTerminal() throws Exception {
    Scenario scenario = ScenarioFile.read(ScenarioFile.DEMO);
    try (Simulator simulator = Simulator.onSocket(scenario, 100, 1, 0, contact -> {})) {
      String[] address = simulator.address().split(":", 2);
      Thread thread = play(simulator);
      try (Socket socket = new Socket(address[0], Integer.parseInt(address[1]))) {
        var in =
            new BufferedReader(
                new InputStreamReader(socket.getInputStream(), StandardCharsets.US_ASCII));
        assertTrue(in.readLine().matches("[+-]\\d\\d\\.\\d{3}"));
      }
      simulator.stop();
      thread.join();
    }
  }
}
