package org.chordlog.trust;

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
public final class IssuerFile {
  private IssuerFile() {}

  /** {@code setting}: the name under which the file is refused. */
  public static SSLContext trusting(String setting, Path file) {
    try {
      TrustManagerFactory trust =
          TrustManagerFactory.getInstance(TrustManagerFactory.getDefaultAlgorithm());
      trust.init(store(setting, file));
      SSLContext context = SSLContext.getInstance("TLS");
      context.init(null, trust.getTrustManagers(), null);
      return context;
    } catch (IOException | GeneralSecurityException e) {
      throw bad(setting, file, "can't be read as certificates");
    }
  }

  private static KeyStore store(String setting, Path file)
      throws IOException, GeneralSecurityException {
    KeyStore store = KeyStore.getInstance("PKCS12");
    store.load(null, null);
    try (InputStream in = Files.newInputStream(file)) {
      Collection<? extends Certificate> all =
          CertificateFactory.getInstance("X.509").generateCertificates(in);
      if (all.isEmpty()) {
        throw bad(setting, file, "holds no certificate");
      }
      for (Certificate each : all) {
        store.setCertificateEntry(String.valueOf(store.size()), each);
      }
    }
    return store;
  }

  private static BadInput bad(String setting, Path file, String problem) {
    return new BadInput(setting, file, problem, "a PEM file with the issuer's certificate");
  }
}
