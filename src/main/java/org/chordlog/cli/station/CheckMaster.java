package org.chordlog.cli.station;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.PrintWriter;
import java.util.Map;
import java.util.concurrent.Callable;
import org.chordlog.cli.common.ExitCode;
import org.chordlog.measure.Quantity;
import org.chordlog.measure.Sentence;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Interim check of a station of the running service, and the readings it casts doubt on. */
@Command(
    name = "check",
    mixinStandardHelpOptions = true,
    sortOptions = false,
    description = {
      "Checks a station on the master it stands on; lists the readings in doubt, if any.",
      "Exit code 1 when the check fails or readings are in doubt."
    })
public final class CheckMaster implements Callable<Integer> {
  private static final int PAGE = 1_000;

  @Spec private CommandSpec spec;
  @Mixin private ServiceOptions service;

  @ArgGroup(exclusive = false, multiplicity = "0..1")
  private @Nullable On on;

  /** The master; without it nothing is checked anew. */
  static final class On {
    @Option(
        names = "--master",
        required = true,
        paramLabel = "MASTER",
        description = "Id or name; without it only the readings in doubt are listed.")
    private String master;

    @Option(
        names = "--limit",
        required = true,
        paramLabel = "L",
        description = "Most that the radius may differ from the master's.")
    private String limit;
  }

  @Override
  public Integer call() {
    ServiceClient client = service.client();
    @Nullable JsonNode check = on == null ? null : check(client, on);
    PrintWriter out = spec.commandLine().getOut();
    if (check != null && !service.json()) {
      out.println(words(check));
    }
    long doubtful = doubtful(client, out);
    if (service.json()) {
      ObjectNode told = JsonNodeFactory.instance.objectNode();
      told.set("check", check);
      out.println(told.put("readingsInDoubt", doubtful).toPrettyString());
    } else {
      out.println(doubtful == 0 ? "No reading is in doubt." : "Readings in doubt: " + doubtful);
    }
    out.flush();
    boolean passed = check == null || check.path("passed").asBoolean();
    return passed && doubtful == 0 ? ExitCode.WELL : ExitCode.FAULT;
  }

  private JsonNode check(ServiceClient client, On on) {
    long master = Masters.id(client, on.master);
    double limitMm = service.lengths().mm("--limit", on.limit);
    return client.postHere("/checks", Map.of("masterId", master, "limitMm", limitMm));
  }

  private String words(JsonNode check) {
    JsonNode radius = check.path("radiusMm");
    double masterMm = check.path("masterRadiusMm").asDouble();
    double limitMm = check.path("limitMm").asDouble();
    String verdict = check.path("passed").asBoolean() ? "passed" : "failed";
    Quantity master = Quantity.stated(masterMm);
    return radius.isNull()
        ? service.said(Sentence.of("%s: the master of %s reads flat", verdict, master))
        : service.said(
            Sentence.of(
                "%s: %s on a master of %s, off by %s, allowed ± %s",
                verdict,
                Quantity.of(radius.asDouble(), limitMm),
                master,
                Quantity.of(radius.asDouble() - masterMm, limitMm).withSign(),
                Quantity.stated(limitMm)));
  }

  /** How many; as text they are listed too. */
  private long doubtful(ServiceClient client, PrintWriter out) {
    long count = 0;
    JsonNode next = JsonNodeFactory.instance.numberNode(0);
    while (!next.isNull()) {
      JsonNode page =
          client.getHere("/readings-in-doubt?limit=" + PAGE + "&after=" + next.asText());
      count += page.path("items").size();
      if (!service.json()) {
        page.path("items").forEach(reading -> out.println(line(reading)));
      }
      next = page.path("next");
    }
    return count;
  }

  private String line(JsonNode reading) {
    return service.said(
        Sentence.of(
            "reading %s, job %s, piece %s, %s, %s: %s",
            reading.path("id").asText(),
            reading.path("jobId").asText(),
            reading.path("piece").asText(),
            reading.path("position").asText(),
            reading.path("at").asText(),
            Said.radius(reading)));
  }
}
