package org.chordlog.cli.station;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.security.KeyStore;
import java.security.cert.Certificate;
import java.security.cert.CertificateFactory;
import java.util.Collection;
import javax.net.ssl.SSLContext;
import javax.net.ssl.TrustManagerFactory;
import org.chordlog.measure.BadInput;

/** Trust in what the certificates of a PEM file vouch for, and in nothing else. */
final class CaFile {
  private CaFile() {}

  static SSLContext trusting(Path file) {
    try {
      TrustManagerFactory trust =
          TrustManagerFactory.getInstance(TrustManagerFactory.getDefaultAlgorithm());
      trust.init(store(file));
      SSLContext context = SSLContext.getInstance("TLS");
      context.init(null, trust.getTrustManagers(), null);
      return context;
    } catch (IOException | GeneralSecurityException e) {
      throw bad(file, "can't be read as certificates");
    }
  }

  private static KeyStore store(Path file) throws IOException, GeneralSecurityException {
    KeyStore store = KeyStore.getInstance("PKCS12");
    store.load(null, null);
    try (InputStream in = Files.newInputStream(file)) {
      Collection<? extends Certificate> all =
          CertificateFactory.getInstance("X.509").generateCertificates(in);
      if (all.isEmpty()) {
        throw bad(file, "holds no certificate");
      }
      for (Certificate each : all) {
        store.setCertificateEntry(String.valueOf(store.size()), each);
      }
    }
    return store;
  }

  private static BadInput bad(Path file, String problem) {
    return new BadInput("--ca-file", file, problem, "a PEM file with the issuer's certificate");
  }
}
