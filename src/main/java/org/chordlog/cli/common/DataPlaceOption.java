package org.chordlog.cli.common;

import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** The data directory of a command that finds the usual one by itself. */
public final class DataPlaceOption {
  @Option(
      names = "--data",
      paramLabel = "DIR",
      description = "Data directory (chordlog in the user's own data folder).")
  private @Nullable Path given;

  /** As given; null where the usual one is meant. */
  public @Nullable Path given() {
    return given;
  }

  public Path place() {
    return given == null ? DataPlace.usual() : given;
  }
}
