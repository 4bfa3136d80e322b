package org.chordlog.cli.records;

import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import org.chordlog.cli.common.ExitCode;
import org.chordlog.cli.common.JsonText;
import org.chordlog.store.open.Stores;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Reads everything that is stored and says what is wrong with it. */
@Command(
    name = "audit",
    mixinStandardHelpOptions = true,
    description = {
      "Reads everything that is stored and says what is damaged or missing.",
      "Looked at are the file's pages and references, every reading and set-up, every block of",
      "samples, the jobs' totals, and holes in the stations' sequences.",
      "Exit code 1 when anything is wrong. Nothing is changed."
    })
public final class Audit implements Callable<Integer> {
  @Spec private CommandSpec spec;
  @Mixin private DataOption data;

  @Option(names = "--json", description = "Tell as JSON.")
  private boolean json;

  @Override
  public Integer call() {
    List<String> faults = Stores.files(data.directory).audit();
    if (json) {
      spec.commandLine().getOut().println(JsonText.of(Map.of("faults", faults)));
    } else {
      faults.forEach(spec.commandLine().getOut()::println);
      spec.commandLine().getOut().println(faults.isEmpty() ? "All is well." : "");
    }
    return faults.isEmpty() ? ExitCode.WELL : ExitCode.FAULT;
  }
}
