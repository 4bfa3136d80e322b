package org.chordlog.cli.records;

import java.io.PrintWriter;
import java.util.List;
import java.util.concurrent.Callable;
import org.chordlog.cli.common.ExitCode;
import org.chordlog.cli.common.JsonText;
import org.chordlog.cli.records.Recomputation.Difference;
import org.chordlog.store.Store;
import org.chordlog.store.open.Stores;
import org.chordlog.verdict.Counted;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Every radius once more, from what it was computed from. */
@Command(
    name = "recompute",
    mixinStandardHelpOptions = true,
    sortOptions = false,
    description = {
      "Derives every radius again from its indicator value and set-up and compares bit for bit.",
      "Exit code 1 when any differs. Nothing is changed, and the service may go on meanwhile."
    })
public final class Recompute implements Callable<Integer> {
  private static final int SHOWN = 100;

  @Spec private CommandSpec spec;
  @Mixin private DataOption data;

  @Option(names = "--job", paramLabel = "N", description = "Only this job's readings.")
  private @Nullable Long job;

  @Option(names = "--json", description = "Print JSON.")
  private boolean json;

  /** What is told: readings processed, how many differ, and the first of those. */
  record Told(long readings, long differing, List<Difference> differences) {}

  @Override
  public Integer call() {
    Told told;
    try (Store store = Stores.openForReading(data.directory)) {
      DataOption.requireJob(store, job);
      Recomputation recomputation = new Recomputation(store.readings(), SHOWN);
      long count = recomputation.run(job);
      told = new Told(count, recomputation.differing(), recomputation.first());
    }
    print(told, spec.commandLine().getOut());
    return told.differing() == 0 ? ExitCode.WELL : ExitCode.FAULT;
  }

  private void print(Told told, PrintWriter out) {
    if (json) {
      out.println(JsonText.of(told));
      return;
    }
    told.differences().forEach(out::println);
    if (told.differences().size() == SHOWN) {
      out.println("No more than " + SHOWN + " differences are listed.");
    }
    out.println(
        Counted.of(told.readings(), "reading") + " recomputed, " + told.differing() + " differ");
  }
}
