package org.chordlog.cli.device;

import java.math.BigDecimal;
import java.nio.file.Path;
import java.util.List;
import org.chordlog.capture.Direction;
import org.chordlog.decode.FrameProfile;
import org.chordlog.decode.Proposal;
import org.chordlog.link.LinkException;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Check;
import org.chordlog.measure.Indicator;
import org.chordlog.measure.Length;
import org.chordlog.measure.LengthUnit;
import org.chordlog.measure.Lengths;
import org.chordlog.measure.Quantity;
import org.chordlog.station.LiveReading;
import org.chordlog.station.StationFileWriter;
import org.chordlog.station.StationSettings;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** Keeps a proposal as a new station. */
final class SaveOptions {
  private static final double TRY_SECONDS = 2;
  private static final String PRESS = "Press the button with the service running to see it read.";

  @Option(
      names = "--save",
      required = true,
      paramLabel = "FILE",
      description = "Add a station with a proposal to this station file.")
  private Path file;

  @Option(
      names = "--name",
      paramLabel = "NAME",
      required = true,
      description = "The name of the station that is added.")
  private String name;

  @Option(
      names = "--travel",
      paramLabel = "MM",
      required = true,
      description = "Travel of the indicator, mm.")
  private double travelMm;

  @Option(
      names = "--permissible-error",
      paramLabel = "MM",
      required = true,
      description = "The indicator's permissible error (its data sheet says it), mm.")
  private double permissibleErrorMm;

  @Option(
      names = "--resolution",
      paramLabel = "MM",
      description = "Step of the indicator, mm (default: as the numbers are written).")
  private @Nullable Double resolutionMm;

  @Option(
      names = "--channel",
      paramLabel = "N",
      description = "The channel that measures the depth, where the proposal gives several.")
  private @Nullable Integer channel;

  @Option(
      names = "--direction",
      paramLabel = "DIRECTION",
      description =
          "What the indicator shows while its plunger is pushed in: ${COMPLETION-CANDIDATES}"
              + ". Left out, no zero is taken until it is said at the station's page.")
  private @Nullable Direction direction;

  @Option(
      names = "--pick",
      paramLabel = "N",
      defaultValue = "1",
      description = "The number of the proposal that is saved (${DEFAULT-VALUE}).")
  private int pick;

  @Option(
      names = "--button",
      description = "The indicator sends only when its data button is pressed.")
  private boolean button;

  /** Adds the station, tries it on the spot and says what it reads. */
  String write(FoundAtPort found) throws LinkException {
    Check.within("--pick", pick, 1, found.proposals().size());
    Proposal picked = found.proposals().get(pick - 1);
    FrameProfile profile = button ? picked.profile().onButtonOnly() : picked.profile();
    Indicator indicator = new Indicator(resolutionMm(profile), permissibleErrorMm, travelMm);
    StationSettings station =
        StationSettings.of(name, found.link(), profile, indicator)
            .channel(channel)
            .direction(direction)
            .silenceSeconds(button ? 0.0 : null)
            .build();
    StationFileWriter.append(file, station);
    return "Saved to " + file + ". " + (button ? PRESS : tried(found, station));
  }

  private static String tried(FoundAtPort found, StationSettings station) throws LinkException {
    return LiveReading.of(found.link(), List.of(station.profile()), TRY_SECONDS).get(0).stream()
        .filter(read -> read.channel() == station.channel())
        .findFirst()
        .map(read -> "It reads " + Lengths.MM.text(shown(read.lastNm())) + " now.")
        .orElse("Nothing was read from it just now: is the indicator still sending?");
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
          "",
          "must be stated, since the frames do not tell it",
          "the indicator's step in mm");
    }
    return unit.toNm(BigDecimal.valueOf(1, decimals).multiply(profile.number().scale())) / 1e6;
  }

  private static Quantity shown(long nm) {
    return Quantity.stated(Length.mm(nm)).withSign();
  }
}
