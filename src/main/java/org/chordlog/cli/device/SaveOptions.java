package org.chordlog.cli.device;

import java.math.BigDecimal;
import java.nio.file.Path;
import org.chordlog.capture.Direction;
import org.chordlog.decode.FrameProfile;
import org.chordlog.decode.Proposal;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Indicator;
import org.chordlog.measure.LengthUnit;
import org.chordlog.station.PortSearch.Heard;
import org.chordlog.station.StationFileWriter;
import org.chordlog.station.StationSettings;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** Keeps the best proposal as a new station. */
final class SaveOptions {
  @Option(
      names = "--save",
      required = true,
      paramLabel = "FILE",
      description = "Add a station with the best proposal to this station file.")
  private Path file;

  @Option(names = "--name", required = true, description = "The name of the station that is added.")
  private String name;

  @Option(names = "--travel", required = true, description = "Travel of the indicator, mm.")
  private double travelMm;

  @Option(
      names = "--permissible-error",
      required = true,
      description = "The indicator's permissible error (its data sheet says it), mm.")
  private double permissibleErrorMm;

  @Option(
      names = "--resolution",
      description = "Step of the indicator, mm (default: as the numbers are written).")
  private @Nullable Double resolutionMm;

  @Option(
      names = "--channel",
      description = "The channel that measures the depth, where the proposal gives several.")
  private @Nullable Integer channel;

  @Option(
      names = "--direction",
      description =
          "What the indicator shows while its plunger is pushed in: ${COMPLETION-CANDIDATES}"
              + " (default: COUNTS_UP).")
  private @Nullable Direction direction;

  Path file() {
    return file;
  }

  void write(Heard heard) {
    Proposal best = heard.proposals().get(0);
    Indicator indicator = new Indicator(resolutionMm(best.profile()), permissibleErrorMm, travelMm);
    StationFileWriter.append(
        file,
        StationSettings.of(name, heard.link(), best.profile(), indicator)
            .channel(channel)
            .direction(direction)
            .build());
  }

  private double resolutionMm(FrameProfile profile) {
    if (resolutionMm != null) {
      return resolutionMm;
    }
    Integer decimals = profile.number().decimals();
    LengthUnit unit = profile.unit();
    if (decimals == null || unit == null) {
      throw new BadInput(
          "--resolution",
          "not given",
          "must be stated, since frames name their unit",
          "the indicator's step in mm");
    }
    return unit.toNm(BigDecimal.valueOf(1, decimals).multiply(profile.number().scale())) / 1e6;
  }
}
