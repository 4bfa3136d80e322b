package org.chordlog.cli.station;

import java.io.PrintWriter;
import java.util.Map;
import java.util.concurrent.Callable;
import org.chordlog.cli.common.ExitCode;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** Asks a station of the running service for a reading. */
@Command(
    name = "trigger",
    mixinStandardHelpOptions = true,
    sortOptions = false,
    description = {
      "Asks a station for a reading now; it takes the next rest.",
      "Measure only with the rollers stopped and the drive locked out."
    })
public final class Trigger implements Callable<Integer> {
  @Spec private CommandSpec spec;
  @Mixin private ServiceOptions service;

  @Override
  public Integer call() {
    var unused = service.client().postHere("/trigger", Map.of());
    PrintWriter out = spec.commandLine().getOut();
    out.println(service.json() ? "{\"asked\": true}" : "Asked.");
    out.flush();
    return ExitCode.WELL;
  }
}
