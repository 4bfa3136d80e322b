package org.chordlog.cli.records;

import java.nio.file.Path;
import org.chordlog.measure.BadInput;
import org.chordlog.store.Store;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** The data directory of a service. */
final class DataOption {
  @Option(
      names = "--data",
      required = true,
      paramLabel = "DIR",
      description = "Data directory of the service.")
  Path directory;

  /** Null stands for all jobs. */
  static void requireJob(Store store, @Nullable Long job) {
    if (job != null && store.jobs().find(job).isEmpty()) {
      throw new BadInput("--job", job, "does not exist", "the number of a job");
    }
  }
}
