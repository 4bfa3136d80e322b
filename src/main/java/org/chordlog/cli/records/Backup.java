package org.chordlog.cli.records;

import java.nio.file.Path;
import java.util.Map;
import java.util.concurrent.Callable;
import org.chordlog.cli.common.ExitCode;
import org.chordlog.cli.common.JsonText;
import org.chordlog.store.open.Stores;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** A checked copy, also while a service logs. */
@Command(
    name = "backup",
    mixinStandardHelpOptions = true,
    description = {
      "Writes a checked copy of everything stored; a service may go on meanwhile.",
      "Files beside the database are not in it: stations.yaml, alerts.yaml, plant.yaml and"
          + " seal-key.pem need copies of their own."
    })
public final class Backup implements Callable<Integer> {
  @Spec private CommandSpec spec;
  @Mixin private DataOption data;

  @Parameters(paramLabel = "FILE", description = "The copy; must not exist.")
  private Path target;

  @Option(names = "--json", description = "Print JSON.")
  private boolean json;

  @Override
  public Integer call() {
    Stores.files(data.directory).backup(target);
    long bytes = target.toFile().length();
    spec.commandLine()
        .getOut()
        .println(
            json
                ? JsonText.of(Map.of("file", target.toString(), "bytes", bytes))
                : "Backup of " + bytes + " bytes, checked: " + target);
    return ExitCode.WELL;
  }
}
