package org.chordlog.cli.service;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.chordlog.cli.common.DataPlaceOption;
import org.chordlog.forward.PlantSettings;
import org.chordlog.measure.BadInput;
import org.chordlog.notify.settings.AlertFile;
import org.chordlog.station.StationFile;
import org.chordlog.station.StationFileKeeper;
import org.chordlog.station.StationSettings;
import org.chordlog.store.StoreSettings;
import org.chordlog.store.open.Stores;
import org.chordlog.web.http.WebSettings;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** What a service with stations reads and where it stores; a plant's service takes none of it. */
final class StationsOptions {
  private static final String STATION_FILE = "stations.yaml";

  @Mixin private DataPlaceOption data = new DataPlaceOption();

  @Option(
      names = "--config",
      paramLabel = "FILE",
      description = "Station file (stations.yaml in the data directory; the pages make it).")
  private @Nullable Path config;

  @Option(
      names = "--trace-days",
      defaultValue = "30",
      paramLabel = "N",
      description = "Days that raw samples are kept, 0: for ever (${DEFAULT-VALUE}).")
  private int traceDays;

  @Option(
      names = "--seal-key",
      paramLabel = "FILE",
      description =
          "Keep the key that signs the record in this file outside of the data directory; also"
              + " without this option from then on.")
  private @Nullable Path sealKey;

  @Option(
      names = "--alerts",
      paramLabel = "FILE",
      description =
          "Who is told of alerts, and how (alerts.yaml beside the station file, with --plant none;"
              + " nobody is told where there is none).")
  private @Nullable Path alerts;

  /** A service that runs; every file is read, and refused where it is wrong, before it starts. */
  Service start(WebSettings web) {
    Path place = folder();
    Path file = config == null ? place.resolve(STATION_FILE) : config;
    List<StationSettings> stations = stations(file);
    if (sealKey != null) {
      Stores.files(place).sealKeyAt(sealKey);
    }
    @Nullable AlertSource told = told(file);
    @Nullable PlantSettings deliveredTo = Service.plantOf(place);
    Service service =
        Service.start(
            place,
            StoreSettings.USUAL.withTraceDays(traceDays),
            stations,
            web,
            new StationFileKeeper(file));
    if (told != null) {
      service.tell(told);
    }
    if (deliveredTo != null) {
      service.deliver(deliveredTo);
    }
    return service;
  }

  /** It is made where there is none. */
  private Path folder() {
    Path place = data.place();
    if (Files.exists(place) && !Files.isDirectory(place)) {
      throw new BadInput("--data", place, "is not a folder", "a folder; a new one is made");
    }
    return place;
  }

  /** None where nobody named a file and none was made yet: the pages lead to the first one. */
  private List<StationSettings> stations(Path file) {
    return config == null && Files.notExists(file) ? List.of() : StationFile.read(file);
  }

  /** Null where nobody named a file and there is none beside the station file. */
  private @Nullable AlertSource told(Path stationFile) {
    Path usual = stationFile.toAbsolutePath().resolveSibling(AlertFile.NAME);
    return alerts == null && Files.notExists(usual)
        ? null
        : AlertSource.read(alerts == null ? usual : alerts);
  }

  /** The file that somebody named; null where nobody did. */
  @Nullable Path alerts() {
    return alerts;
  }

  /** What is measured at the plant's workshop computers; its own service measures nothing. */
  void refuseWithPlant() {
    refuseWithPlant("--data", data.given());
    refuseWithPlant("--config", config);
    refuseWithPlant("--seal-key", sealKey);
  }

  private static void refuseWithPlant(String option, @Nullable Path given) {
    if (given != null) {
      throw new BadInput(
          option, given, "means nothing with --plant", "a service of its own for the stations");
    }
  }
}
