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

/** Takes the zero at a station of the running service. */
@Command(
    name = "zero",
    mixinStandardHelpOptions = true,
    sortOptions = false,
    description = {
      "Takes the zero of a station, the bridge standing still on a flat.",
      "Refused while the plunger moves or hangs in free air."
    })
public final class TakeZero implements Callable<Integer> {
  @Spec private CommandSpec spec;
  @Mixin private ServiceOptions service;

  @Override
  public Integer call() {
    JsonNode zero = service.client().postHere("/zero", Map.of());
    PrintWriter out = spec.commandLine().getOut();
    out.println(service.json() ? zero.toPrettyString() : words(zero));
    out.flush();
    return ExitCode.WELL;
  }

  private String words(JsonNode zero) {
    String taken =
        service.said(
            Sentence.of(
                "Zero %s, standard deviation %s of %d values, at %s",
                Said.depth(zero, "valueMm", "scatterMm"),
                Quantity.uncertainty(zero.path("scatterMm").asDouble()),
                zero.path("sampleCount").asInt(),
                zero.path("takenAt").asText()));
    String doubt = zero.path("doubt").asText("");
    return doubt.isEmpty() ? taken : taken + System.lineSeparator() + doubt;
  }
}
