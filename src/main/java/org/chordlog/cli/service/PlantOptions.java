package org.chordlog.cli.service;

import java.nio.file.Path;
import java.time.Duration;
import org.chordlog.measure.BadInput;
import org.chordlog.notify.WatchedPlant;
import org.chordlog.store.PlantAddress;
import org.chordlog.trust.SecretFile;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** Where the database of a plant is. */
final class PlantOptions {
  @Option(
      names = "--plant",
      paramLabel = "URL",
      description =
          "Serve a plant instead of stations: what its workshop computers delivered to that"
              + " database, as postgresql://HOST:5432/plant, with several hosts where one may"
              + " take over.")
  private @Nullable String url;

  @Option(
      names = "--user",
      paramLabel = "NAME",
      description = "Whom to sign in as at the database of the plant.")
  private @Nullable String user;

  @Option(
      names = "--password-file",
      paramLabel = "FILE",
      description =
          "File with the password of that user, readable by the service only, or credential:NAME as"
              + " systemd hands it over.")
  private @Nullable String passwordFile;

  @Option(
      names = "--database-certificates",
      paramLabel = "FILE",
      description =
          "Certificates in PEM of those who issued the database's (those that Java trusts). Beyond"
              + " this computer the connection is always encrypted and the name checked.")
  private @Nullable Path trusted;

  @Option(
      names = "--silent-minutes",
      paramLabel = "N",
      description =
          "Minutes without a word from a workshop computer after which that is an alert (15; 6 to"
              + " 20160, which is two weeks).")
  private @Nullable Integer silentMinutes;

  Duration silent() {
    return silentMinutes == null
        ? WatchedPlant.USUAL_SILENT
        : WatchedPlant.silentMinutes("--silent-minutes", silentMinutes);
  }

  boolean given() {
    return url != null;
  }

  /** Refused where something is missing. */
  PlantAddress address() {
    String at = needed("--plant", url, "the URL of a database");
    String who = needed("--user", user, "whom to sign in as");
    String file = needed("--password-file", passwordFile, "a file with the password");
    SecretFile password = SecretFile.named("--password-file", file, Path.of(""));
    return PlantAddress.of(at, who, password::read, trusted);
  }

  private static <T> T needed(String option, @Nullable T value, String allowed) {
    if (value == null) {
      throw new BadInput(option, "", "is missing", allowed);
    }
    return value;
  }

  /** What belongs to a plant says nothing without one, and the other way round. */
  void refuseWithout() {
    refuseWithout("--user", user);
    refuseWithout("--password-file", passwordFile);
    refuseWithout("--database-certificates", trusted);
    refuseWithout("--silent-minutes", silentMinutes);
  }

  private static void refuseWithout(String option, @Nullable Object value) {
    if (value != null) {
      throw new BadInput(option, "given", "means nothing without --plant", "--plant URL with it");
    }
  }
}
