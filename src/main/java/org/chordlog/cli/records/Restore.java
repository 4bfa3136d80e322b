package org.chordlog.cli.records;

import java.nio.file.Path;
import java.util.Map;
import java.util.concurrent.Callable;
import org.chordlog.cli.common.ExitCode;
import org.chordlog.cli.common.JsonText;
import org.chordlog.store.StoreFiles;
import org.chordlog.store.open.Stores;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Replaces the data by a backup. */
@Command(
    name = "restore",
    mixinStandardHelpOptions = true,
    description = {
      "Replaces the data in the data directory by a backup; the service must be stopped.",
      "The former data is moved to a folder of its own, never deleted."
    })
public final class Restore implements Callable<Integer> {
  private static final String UNVERIFIED =
      "\nIt has no checksum (an older backup, or a copy of the file): that nothing in it was changed"
          + " can't be verified.";

  @Spec private CommandSpec spec;
  @Mixin private DataOption data;

  @Parameters(paramLabel = "FILE", description = "A backup, as backup made it.")
  private Path source;

  @Option(names = "--json", description = "Print JSON.")
  private boolean json;

  @Override
  public Integer call() {
    StoreFiles.Restored restored = Stores.files(data.directory).restore(source);
    String aside = restored.setAside().map(Path::toString).orElse("");
    String told =
        (aside.isEmpty() ? "" : "; the former data is in " + aside)
            + (restored.verified() ? "" : UNVERIFIED);
    spec.commandLine()
        .getOut()
        .println(
            json
                ? JsonText.of(
                    Map.of(
                        "restored", source.toString(),
                        "setAside", aside,
                        "verified", restored.verified()))
                : "Restored from " + source + told);
    return ExitCode.WELL;
  }
}
