package org.chordlog.web;

import java.io.IOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;

/** The settings of a provider for tests; groups and secret are invented. */
final class OpenIdSettingsFile {
  static final String SECRET = "an invented secret of 32 letters";

  private OpenIdSettingsFile() {}

  static Path written(Path folder, URI issuer) throws IOException {
    Path secret = Files.writeString(folder.resolve("openid-secret"), SECRET + "\n");
    Files.setPosixFilePermissions(secret, PosixFilePermissions.fromString("rw-------"));
    return Files.writeString(
        folder.resolve("openid.yaml"),
        """
        issuer: %s
        name: Sign in with the plant's directory
        clientId: chordlog
        clientSecretFile: openid-secret
        scope: openid profile groups
        roles:
          benders: operator
          inspection: [quality, gauge-keeper]
        """
            .formatted(issuer));
  }
}
