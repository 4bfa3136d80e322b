package org.chordlog.trust;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.security.KeyStore;
import java.security.cert.Certificate;
import java.security.cert.CertificateFactory;
import java.util.Arrays;
import java.util.Collection;
import javax.net.ssl.SSLContext;
import javax.net.ssl.TrustManager;
import javax.net.ssl.TrustManagerFactory;
import javax.net.ssl.X509ExtendedTrustManager;
import org.chordlog.measure.BadInput;
import org.jspecify.annotations.Nullable;

/** Trust in what the certificates of a PEM file vouch for, and in nothing else. */
public final class IssuerFile {
  private static final String UNREADABLE = "can't be read as certificates";

  private IssuerFile() {}

  /** {@code setting}: the name under which the file is refused. */
  public static SSLContext trusting(String setting, Path file) {
    try {
      SSLContext context = SSLContext.getInstance("TLS");
      context.init(null, new TrustManager[] {trust(setting, file)}, null);
      return context;
    } catch (GeneralSecurityException e) {
      throw bad(setting, file, UNREADABLE);
    }
  }

  /** The same as what checks certificates. */
  public static X509ExtendedTrustManager trust(String setting, Path file) {
    try {
      return manager(store(setting, file));
    } catch (IOException | GeneralSecurityException e) {
      throw bad(setting, file, UNREADABLE);
    }
  }

  /** Trust in those whom Java trusts. */
  public static X509ExtendedTrustManager usual() throws GeneralSecurityException {
    return manager(null);
  }

  private static X509ExtendedTrustManager manager(@Nullable KeyStore issuers)
      throws GeneralSecurityException {
    TrustManagerFactory trust =
        TrustManagerFactory.getInstance(TrustManagerFactory.getDefaultAlgorithm());
    trust.init(issuers);
    return Arrays.stream(trust.getTrustManagers())
        .filter(X509ExtendedTrustManager.class::isInstance)
        .map(X509ExtendedTrustManager.class::cast)
        .findFirst()
        .orElseThrow();
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
