package org.chordlog.cli.station;

import java.nio.file.Path;
import org.chordlog.measure.BadInput;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** Where the running service is, who asks, and which station is meant. */
public final class ServiceOptions extends ServiceAddress {
  @Option(names = "--station", paramLabel = "NAME", description = "The station (needed).")
  private @Nullable String station;

  ServiceClient client() {
    if (station == null) {
      throw new BadInput("--station", "nothing", "was given", "the name of a station");
    }
    return client(station);
  }

  public static String read(Path tokenFile) {
    return ServiceAddress.read(tokenFile);
  }
}
