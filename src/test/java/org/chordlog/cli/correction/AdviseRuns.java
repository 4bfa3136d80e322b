package org.chordlog.cli.correction;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import org.chordlog.cli.Chordlog;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;

/** Runs of the command over a file or its standard input. */
abstract class AdviseRuns {
  static final JsonMapper MAPPER = JsonMapper.builder().build();
  static final String USUAL = "advise --follow --target 1800 --tolerance 12 ";
  final InputStream standardInput = System.in;
  @TempDir Path folder;

  record Ran(int code, List<String> out, String err) {
    JsonNode line(int index) throws IOException {
      return MAPPER.readTree(out.get(index));
    }

    String action(int index) throws IOException {
      return line(index).get("action").asText();
    }
  }

  @AfterEach
  void giveBack() {
    System.setIn(standardInput);
  }

  static Ran run(String command) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    CommandLine line =
        Chordlog.commandLine().setOut(new PrintWriter(out)).setErr(new PrintWriter(err));
    int code = line.execute(command.strip().split(" +"));
    return new Ran(code, out.toString().lines().toList(), err.toString());
  }

  static Ran follow(String command, String... lines) {
    byte[] in = String.join("\n", lines).getBytes(StandardCharsets.UTF_8);
    System.setIn(new ByteArrayInputStream(in));
    return run(command);
  }

  static String piece(double radius) {
    return "{\"piece\":{\"radiusMm\":" + radius + ",\"standardUncertaintyMm\":0.6}}";
  }
}
