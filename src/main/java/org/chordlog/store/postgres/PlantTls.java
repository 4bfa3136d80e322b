package org.chordlog.store.postgres;

import java.io.IOException;
import java.net.Socket;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.util.Properties;
import javax.net.ssl.SSLContext;
import javax.net.ssl.SSLParameters;
import javax.net.ssl.SSLSocket;
import javax.net.ssl.TrustManager;
import org.chordlog.trust.IssuerFile;
import org.jspecify.annotations.Nullable;
import org.postgresql.ssl.WrappedFactory;

/**
 * TLS to the database of a plant, only to a server whose certificate is trusted and is of the name
 * that was asked for. The driver makes one for each connection, so that a file of issuers which was
 * replaced is used from the next connection on.
 */
public final class PlantTls extends WrappedFactory {
  /** The driver's setting for the file of issuers; without it those whom Java trusts. */
  static final String ISSUERS = "sslrootcert";

  /** By name, for the driver. */
  public PlantTls(Properties settings) throws GeneralSecurityException {
    @Nullable String named = settings.getProperty(ISSUERS);
    Path file = named == null ? null : Path.of(named);
    ServerTrust trust =
        new ServerTrust(file == null ? IssuerFile.usual() : IssuerFile.trust(ISSUERS, file), file);
    SSLContext context = SSLContext.getInstance("TLS");
    context.init(null, new TrustManager[] {trust}, null);
    factory = context.getSocketFactory();
  }

  /** The name is checked within the handshake (RFC 2818, 3.1), before the user is told. */
  @Override
  public Socket createSocket(Socket socket, String host, int port, boolean autoClose)
      throws IOException {
    Socket made = super.createSocket(socket, host, port, autoClose);
    if (made instanceof SSLSocket secured) {
      SSLParameters parameters = secured.getSSLParameters();
      parameters.setEndpointIdentificationAlgorithm("HTTPS");
      secured.setSSLParameters(parameters);
    }
    return made;
  }
}
