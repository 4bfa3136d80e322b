package org.chordlog.cli.station;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.PrintWriter;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Map;
import java.util.concurrent.Callable;
import org.chordlog.cli.common.ExitCode;
import org.chordlog.measure.Quantity;
import org.chordlog.measure.Sentence;
import org.chordlog.measure.TimeText;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Calibration of a station of the running service, a master at a time. */
@Command(
    name = "calibrate",
    mixinStandardHelpOptions = true,
    sortOptions = false,
    description = {
      "Calibrates a station: read each master it is put on, look at the fit, keep it.",
      "Without a step it shows what was read and its fit.",
      "With --csv it fits readings on masters from a file, without a service."
    })
public final class Calibrate implements Callable<Integer> {
  private static final String RUN = "/calibration-run";

  @Spec private CommandSpec spec;
  @Mixin private ServiceOptions service;

  @Mixin private MasterFile file;

  @ArgGroup(multiplicity = "0..1")
  private @Nullable Step step;

  /** One of the steps. */
  static final class Step {
    @Option(
        names = "--master",
        paramLabel = "MASTER",
        description = "Read the master (id or name) that the bridge stands on.")
    private @Nullable String master;

    @Option(
        names = "--keep-until",
        paramLabel = "TIME",
        description = {
          "Keep the fit, due again then, as 2027-11-25 or 25.11.2027;",
          "of this computer's time zone where no offset is written."
        })
    private @Nullable String due;

    @Option(names = "--forget", description = "Forget what was read.")
    private boolean forget;
  }

  @Override
  public Integer call() {
    if (file.given()) {
      spec.commandLine().getOut().println(file.fit(service.json(), service.lengths()));
      return ExitCode.WELL;
    }
    ServiceClient client = service.client();
    JsonNode answer = step == null ? client.getHere(RUN) : step(client, step);
    PrintWriter out = spec.commandLine().getOut();
    out.println(service.json() ? answer.toPrettyString() : words(answer));
    out.flush();
    return ExitCode.WELL;
  }

  private static JsonNode step(ServiceClient client, Step step) {
    if (step.master != null) {
      long master = Masters.id(client, step.master);
      return client.postHere(RUN + "/readings", Map.of("masterId", master));
    }
    if (step.due != null) {
      return client.postHere("/calibrations", Map.of("dueAt", instant(step.due)));
    }
    if (step.forget) {
      var unused = client.deleteHere(RUN);
    }
    return client.getHere(RUN);
  }

  private static String instant(String due) {
    return TimeText.iso(TimeText.micros("--keep-until", due, ZoneId.systemDefault()));
  }

  private String words(JsonNode answer) {
    return answer.has("readings") ? run(answer) : kept(answer);
  }

  private String run(JsonNode run) {
    StringBuilder text = new StringBuilder();
    for (JsonNode on : run.path("readings")) {
      text.append(reading(on)).append('\n');
    }
    if (text.isEmpty()) {
      return "No master has been read yet: stand the bridge on one, then --master MASTER.";
    }
    JsonNode fit = run.path("fit");
    if (fit.isNull()) {
      return text.append("No fit yet: ").append(run.path("whyNoFit").asText()).toString();
    }
    text.append(service.said(Sentence.of("span %s", Said.span(fit))));
    fit.path("notes").forEach(note -> text.append('\n').append(note.asText()));
    return text.toString();
  }

  private String reading(JsonNode on) {
    JsonNode residual = on.path("residualMm");
    return service.said(
        Sentence.of(
            "%s, radius %s: depth %s%s",
            on.path("master").asText(),
            Quantity.stated(on.path("radiusMm").asDouble()),
            Said.depth(on, "depthMm", "scatterMm"),
            residual.isNull()
                ? ""
                : Sentence.of(
                    ", residual %s", Quantity.uncertainty(residual.asDouble()).withSign())));
  }

  private String kept(JsonNode calibration) {
    return service.said(
        Sentence.of(
            "Calibration %s stored: span %s, due %s. %s",
            calibration.path("id").asText(),
            Said.span(calibration),
            due(calibration.path("dueAt").asText()),
            calibration.path("summary").asText()));
  }

  private static String due(String iso) {
    return TimeText.words(Instant.parse(iso), ZoneId.systemDefault());
  }
}
