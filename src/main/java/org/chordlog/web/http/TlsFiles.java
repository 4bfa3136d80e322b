package org.chordlog.web.http;

import java.nio.file.Path;

/**
 * The PEM files of a service that speaks TLS: its certificate, followed by those of its issuers,
 * and its private key in PKCS#8 form.
 */
public record TlsFiles(Path certificate, Path key) {
  /** Names of the settings, as refusals call them. */
  public static final String CERTIFICATE = "--tls-certificate";

  public static final String KEY = "--tls-key";
}
