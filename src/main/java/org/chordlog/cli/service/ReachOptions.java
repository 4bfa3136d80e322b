package org.chordlog.cli.service;

import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import org.chordlog.measure.BadInput;
import org.chordlog.web.http.AddressRange;
import org.chordlog.web.http.Reach;
import org.chordlog.web.http.TlsFiles;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** How others reach the service. */
final class ReachOptions {
  @Option(
      names = TlsFiles.CERTIFICATE,
      paramLabel = "FILE",
      description =
          "Certificate in PEM, followed by those of its issuers: the pages are served by https."
              + " Read again when it changes.")
  private @Nullable Path certificate;

  @Option(
      names = TlsFiles.KEY,
      paramLabel = "FILE",
      description = "Its private key in PEM, PKCS#8, not encrypted.")
  private @Nullable Path key;

  @Option(
      names = "--host-name",
      paramLabel = "NAME",
      split = ",",
      description =
          "Name by which browsers call the service, beside addresses and the names in the"
              + " certificate. May be repeated.")
  private List<String> names = List.of();

  @Option(
      names = "--trusted-proxy",
      paramLabel = "ADDRESS",
      split = ",",
      description =
          "Proxy whose X-Forwarded-For, -Host and -Proto count, as 127.0.0.1 or 10.1.0.0/16. May"
              + " be repeated.")
  private List<String> proxies = List.of();

  @Option(
      names = "--accounts",
      description =
          "People sign in, also on this computer. Beyond it they always do, unless a token file is"
              + " given.")
  private boolean accounts;

  @Option(
      names = "--openid",
      paramLabel = "FILE",
      description =
          "Settings of a provider of OpenID Connect (YAML), at which people sign in beside those"
              + " with a password.")
  private @Nullable Path provider;

  @Option(
      names = SignInNotice.OPTION,
      paramLabel = "FILE",
      description = "Text that people read on the page Sign in before they do.")
  private @Nullable Path notice;

  @Option(
      names = "--unencrypted",
      description =
          "Serve beyond this computer without a certificate: whoever can listen on the network"
              + " reads passwords and tokens.")
  private boolean unencrypted;

  boolean encrypted() {
    return certificate != null;
  }

  /** {@code open}: beyond this computer, without one token for everybody. */
  Reach reach(boolean open) {
    Reach reach =
        new Reach(Set.copyOf(names), proxies.stream().map(AddressRange::read).toList(), files());
    Reach noticed = notice == null ? reach : reach.withNotice(SignInNotice.read(notice));
    if (provider != null) {
      return noticed.withProvider(provider);
    }
    return accounts || open ? noticed.withAccounts() : noticed;
  }

  /** {@code host}: one that others reach. */
  void refusePlain(String host) {
    if (certificate == null && proxies.isEmpty() && !unencrypted) {
      throw new BadInput(
          "--host",
          host,
          "would send passwords and tokens over the network unencrypted",
          TlsFiles.CERTIFICATE
              + " and "
              + TlsFiles.KEY
              + ", or --unencrypted where nobody else can listen");
    }
  }

  private @Nullable TlsFiles files() {
    if (certificate == null && key == null) {
      return null;
    }
    if (certificate == null || key == null) {
      String missing = key == null ? TlsFiles.KEY : TlsFiles.CERTIFICATE;
      throw new BadInput(missing, "nothing", "was given", "a certificate and its key together");
    }
    return new TlsFiles(certificate, key);
  }
}
