package org.chordlog.cli.station;

import java.nio.file.Path;
import org.chordlog.cli.common.LengthOptions;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Sentence;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Where the running service is, who asks, which station is meant, and the unit of lengths. */
public final class ServiceOptions extends ServiceAddress {
  @Option(names = "--station", paramLabel = "NAME", description = "The station (needed).")
  private @Nullable String station;

  @Mixin private LengthOptions lengths = new LengthOptions();

  LengthOptions lengths() {
    return lengths;
  }

  /** In the unit of this command. */
  String said(Sentence sentence) {
    return sentence.in(lengths.lengths());
  }

  ServiceClient client() {
    if (station == null) {
      throw new BadInput("--station", "nothing", "was given", "the name of a station");
    }
    return client(station).in(lengths.metric() ? "mm" : "inch");
  }

  public static String read(Path tokenFile) {
    return ServiceAddress.read(tokenFile);
  }
}
