package org.chordlog.cli.station;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.PrintWriter;
import java.util.Map;
import java.util.concurrent.Callable;
import org.chordlog.cli.common.ExitCode;
import org.chordlog.measure.Quantity;
import org.chordlog.measure.Sentence;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** Asks a station of the running service for a reading, and waits for it. */
@Command(
    name = "trigger",
    mixinStandardHelpOptions = true,
    sortOptions = false,
    description = {
      "Asks a station for a reading: the rest that lasts now, or the next one, and waits for it.",
      "Exit code 1 when it was refused, with the reason.",
      "Measure only with the rollers stopped and the drive locked out."
    })
public final class Trigger implements Callable<Integer> {
  private static final int DEPTH_DECIMALS = 3; // as on the pages

  @Spec private CommandSpec spec;
  @Mixin private ServiceOptions service;

  @Override
  public Integer call() {
    JsonNode answer = service.client().postHere("/trigger", Map.of());
    PrintWriter out = spec.commandLine().getOut();
    out.println(service.json() ? answer.toPrettyString() : words(answer));
    out.flush();
    return answer.path("reading").isObject() ? ExitCode.WELL : ExitCode.FAULT;
  }

  private String words(JsonNode answer) {
    JsonNode reading = answer.path("reading");
    if (!reading.isObject()) {
      return "Not taken: "
          + answer.path("words").asText()
          + " ("
          + answer.path("detail").asText()
          + "). "
          + answer.path("advice").asText();
    }
    return service.said(
        Sentence.of(
            "Piece %d, %s: depth %s, radius %s%s",
            reading.path("piece").asInt(),
            reading.path("position").asText(),
            Quantity.fixed(reading.path("depthMm").asDouble(), DEPTH_DECIMALS),
            Said.radius(reading),
            Said.between(reading)));
  }
}
