package org.chordlog.store.postgres;

import java.net.Socket;
import java.nio.file.Path;
import java.security.cert.CertificateException;
import java.security.cert.X509Certificate;
import javax.net.ssl.SSLEngine;
import javax.net.ssl.SSLSession;
import javax.net.ssl.SSLSocket;
import javax.net.ssl.X509ExtendedTrustManager;
import org.jspecify.annotations.Nullable;

/** Checks a server's certificate as Java does; the refusal holds the certificate. */
final class ServerTrust extends X509ExtendedTrustManager {
  private final X509ExtendedTrustManager trust;
  private final @Nullable Path issuers;

  ServerTrust(X509ExtendedTrustManager trust, @Nullable Path issuers) {
    this.trust = trust;
    this.issuers = issuers;
  }

  /** {@code host}: as it was asked for; {@code issuers}: the file of those who are trusted. */
  static final class NotTrusted extends CertificateException {
    private static final long serialVersionUID = 1;
    private final transient X509Certificate certificate;
    private final transient String host;
    private final transient @Nullable Path issuers;

    NotTrusted(
        X509Certificate certificate,
        String host,
        @Nullable Path issuers,
        CertificateException why) {
      super(why.getMessage(), why);
      this.certificate = certificate;
      this.host = host;
      this.issuers = issuers;
    }

    X509Certificate certificate() {
      return certificate;
    }

    String host() {
      return host;
    }

    @Nullable Path issuers() {
      return issuers;
    }
  }

  @Override
  public void checkServerTrusted(X509Certificate[] chain, String type, Socket socket)
      throws CertificateException {
    try {
      trust.checkServerTrusted(chain, type, socket);
    } catch (CertificateException e) {
      throw new NotTrusted(chain[0], host(socket), issuers, e);
    }
  }

  private static String host(Socket socket) {
    SSLSession session = socket instanceof SSLSocket secured ? secured.getHandshakeSession() : null;
    return session == null ? "" : String.valueOf(session.getPeerHost());
  }

  @Override
  public void checkServerTrusted(X509Certificate[] chain, String type, SSLEngine engine)
      throws CertificateException {
    trust.checkServerTrusted(chain, type, engine);
  }

  @Override
  public void checkServerTrusted(X509Certificate[] chain, String type) throws CertificateException {
    trust.checkServerTrusted(chain, type);
  }

  @Override
  public void checkClientTrusted(X509Certificate[] chain, String type, Socket socket)
      throws CertificateException {
    trust.checkClientTrusted(chain, type, socket);
  }

  @Override
  public void checkClientTrusted(X509Certificate[] chain, String type, SSLEngine engine)
      throws CertificateException {
    trust.checkClientTrusted(chain, type, engine);
  }

  @Override
  public void checkClientTrusted(X509Certificate[] chain, String type) throws CertificateException {
    trust.checkClientTrusted(chain, type);
  }

  @Override
  public X509Certificate[] getAcceptedIssuers() {
    return trust.getAcceptedIssuers();
  }
}
