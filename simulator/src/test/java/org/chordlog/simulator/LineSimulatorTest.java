package org.chordlog.simulator;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** A line played over sockets, as a service would read it. */
@Timeout(60)
final class LineSimulatorTest {
  private static LineScenario scenario(boolean ownLink) throws IOException {
    String yaml = Files.readString(Path.of("demo-data", ScenarioFile.LINE + ".yaml"));
    return ScenarioFile.parseLine(yaml.replace("ownLink: false", "ownLink: " + ownLink));
  }

  private static Socket socket(String address) throws IOException {
    int colon = address.lastIndexOf(':');
    return new Socket(address.substring(0, colon), Integer.parseInt(address.substring(colon + 1)));
  }

  private static List<String> lines(BufferedReader in, int count) throws IOException {
    List<String> lines = new ArrayList<>();
    while (lines.size() < count) {
      lines.add(in.readLine());
    }
    return lines;
  }

  private static BufferedReader reader(Socket socket) throws IOException {
    return new BufferedReader(
        new InputStreamReader(socket.getInputStream(), StandardCharsets.US_ASCII));
  }

  @Test
  void depthAndCountsComeInOneFrame() throws Exception {
    try (Simulators simulators = new Simulators()) {
      simulators.start(LineSimulator.onSocket(scenario(false), 20, 1, 0, truth -> {}));
      try (Socket socket = socket(simulators.addresses().get(0))) {
        for (String line : lines(reader(socket), 400)) {
          assertTrue(line.matches("[+-]\\d\\d\\.\\d{3};[+-]\\d{9}"), line);
        }
      }
    }
  }

  @Test
  void orCountsHaveALinkOfTheirOwnAndAStopStopsThem() throws Exception {
    try (Simulators simulators = new Simulators()) {
      simulators.start(LineSimulator.onSocket(scenario(true), 20, 1, 0, truth -> {}));
      assertEquals(2, simulators.addresses().size());
      try (Socket depth = socket(simulators.addresses().get(0));
          Socket length = socket(simulators.addresses().get(1))) {
        BufferedReader counts = reader(length);
        assertTrue(lines(reader(depth), 10).get(9).matches("[+-]\\d\\d\\.\\d{3}"));
        long first = Long.parseLong(lines(counts, 20).get(19));
        long later = Long.parseLong(lines(counts, 100).get(99));
        assertTrue(later > first + 1000, first + " then " + later);
        assertEquals("", simulators.told("stop 3000"));
        long before = later;
        List<String> standing = lines(counts, 50);
        for (int i = 0; i < 200 && spread(standing) > 0; i++) {
          standing = lines(counts, 50);
        }
        assertEquals(0, spread(standing), "still after " + before);
      }
    }
  }

  private static long spread(List<String> counts) {
    long least = counts.stream().mapToLong(Long::parseLong).min().orElse(0);
    return counts.stream().mapToLong(Long::parseLong).max().orElse(0) - least;
  }
}
