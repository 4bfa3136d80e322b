package org.chordlog.web.http;

import java.nio.file.Path;
import java.time.Duration;

/**
 * The PEM files of a service that speaks TLS: its certificate, followed by those of its issuers,
 * and its private key in PKCS#8 form. Each {@code look} it is looked whether they have changed.
 */
public record TlsFiles(Path certificate, Path key, Duration look) {
  /** Names of the settings, as refusals call them. */
  public static final String CERTIFICATE = "--tls-certificate";

  public static final String KEY = "--tls-key";
  private static final Duration USUAL_LOOK = Duration.ofSeconds(5);

  public TlsFiles(Path certificate, Path key) {
    this(certificate, key, USUAL_LOOK);
  }
}
