package org.chordlog.cli.records;

import java.nio.file.Path;
import picocli.CommandLine.Option;

/** The data directory of a service. */
final class DataOption {
  @Option(
      names = "--data",
      required = true,
      paramLabel = "DIR",
      description = "Data directory of the service.")
  Path directory;
}
