package org.chordlog.cli.station;

import java.util.concurrent.Callable;
import org.chordlog.cli.common.ExitCode;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** Masters in and out as a file. */
@Command(
    name = "masters",
    mixinStandardHelpOptions = true,
    sortOptions = false,
    description = {
      "Masters of the running service as CSV, and from CSV.",
      "Columns: name, face (outer or inner), radius_mm, expanded_uncertainty_mm (k = 2, as the",
      "certificate states it), check_limit_mm (may be empty)."
    })
public final class MastersCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;
  @Mixin private GaugeFile file = new GaugeFile();

  @Override
  public Integer call() {
    file.handle("masters", spec.commandLine().getOut());
    return ExitCode.WELL;
  }
}
