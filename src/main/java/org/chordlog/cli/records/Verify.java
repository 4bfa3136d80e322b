package org.chordlog.cli.records;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import org.chordlog.cli.common.ExitCode;
import org.chordlog.cli.common.JsonText;
import org.chordlog.store.SealExpected;
import org.chordlog.store.Store;
import org.chordlog.store.open.Stores;
import org.chordlog.verdict.Counted;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Whether readings that were exported are those that are stored. */
@Command(
    name = "verify",
    mixinStandardHelpOptions = true,
    description = {
      "Checks readings that were exported as CSV.",
      "Without --data only the sum in the file's last line: it shows a slip or a broken copy, but"
          + " not somebody who made the sum anew. With --data every line is compared with the readings"
          + " stored there, and these with their chain of hashes up to the entry that the file names.",
      "Exit code 1 when anything differs. Nothing is changed."
    })
public final class Verify implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Parameters(paramLabel = "FILE", description = "CSV as 'export' or the service wrote it.")
  private Path file;

  @Option(
      names = "--data",
      paramLabel = "DIR",
      description = "Data directory to compare with; a service may be running on it.")
  private @Nullable Path directory;

  @Option(names = "--json", description = "Tell as JSON.")
  private boolean json;

  @Override
  public Integer call() {
    SealedCsv csv = SealedCsv.read(file);
    List<String> faults = new ArrayList<>(csv.faults());
    if (directory != null) {
      compare(csv, directory, faults);
    }
    tell(csv, faults);
    return faults.isEmpty() ? ExitCode.WELL : ExitCode.FAULT;
  }

  private static void compare(SealedCsv csv, Path data, List<String> faults) {
    try (Store store = Stores.openForReading(data)) {
      if (!store.identity().equals(csv.seal().tip().database())) {
        faults.add("the file is of another database: " + csv.seal().tip().database());
        return;
      }
      faults.addAll(new CsvComparison(csv.rows()).with(store));
    }
    SealExpected.Anchor anchor = SealExpected.Anchor.of(csv.seal().tip().anchor());
    faults.addAll(Stores.files(data).auditSeal(new SealExpected(List.of(anchor), "")).faults());
  }

  private void tell(SealedCsv csv, List<String> faults) {
    if (json) {
      spec.commandLine()
          .getOut()
          .println(
              JsonText.of(
                  Map.of(
                      "readings",
                      csv.rows().size(),
                      "entry",
                      csv.seal().tip().anchor(),
                      "comparedWithData",
                      directory != null,
                      "faults",
                      faults)));
      return;
    }
    faults.forEach(spec.commandLine().getOut()::println);
    if (faults.isEmpty()) {
      spec.commandLine().getOut().println(Counted.of(csv.rows().size(), "reading") + ": " + well());
    }
  }

  private String well() {
    return directory == null
        ? "the sum in the file is right. That they are the stored ones is shown with --data."
        : "all are as stored, and their chain of hashes is whole.";
  }
}
