package org.chordlog.forward;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.List;
import org.chordlog.measure.BadInput;
import org.chordlog.store.PlantAddress;
import org.chordlog.trust.IssuerFile;
import org.chordlog.trust.SecretFile;
import org.jspecify.annotations.Nullable;

/** The keys of the file of the plant. */
record PlantFields(
    @Nullable String edge,
    @Nullable String site,
    @Nullable String database,
    @Nullable String user,
    @Nullable String passwordFile,
    @Nullable String trustedCertificates,
    @Nullable Integer kilobytesASecond) {
  static final List<String> KEYS =
      List.of(
          "edge",
          "site",
          "database",
          "user",
          "passwordFile",
          "trustedCertificates",
          "kilobytesASecond");

  PlantSettings settings(Path folder) {
    SecretFile password =
        SecretFile.named("passwordFile", required("passwordFile", passwordFile), folder);
    return new PlantSettings(
        required("edge", edge),
        required("site", site),
        PlantAddress.of(
            required("database", database),
            required("user", user),
            password::read,
            trusted(folder)),
        kilobytesASecond == null ? 0 : kilobytesASecond);
  }

  private static String required(String key, @Nullable String given) {
    if (given == null) {
      throw new BadInput(key, "", "is missing", "a value");
    }
    return given;
  }

  /** Read once, so that a fault shows at once. */
  private @Nullable Path trusted(Path folder) {
    if (trustedCertificates == null) {
      return null;
    }
    try {
      Path file = folder.resolve(trustedCertificates);
      Object unused = IssuerFile.trusting("trustedCertificates", file);
      return file;
    } catch (InvalidPathException e) {
      throw new BadInput("trustedCertificates", trustedCertificates, "is not a path", "a PEM file");
    }
  }
}
