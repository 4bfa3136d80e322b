package org.chordlog.web.tls;

import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.security.GeneralSecurityException;
import java.security.cert.X509Certificate;
import java.util.Arrays;
import javax.net.ssl.SSLContext;
import javax.net.ssl.SSLEngine;
import javax.net.ssl.SSLSocket;
import javax.net.ssl.TrustManager;
import javax.net.ssl.X509ExtendedTrustManager;
import org.eclipse.jetty.server.Connector;
import org.eclipse.jetty.server.NetworkConnector;
import org.eclipse.jetty.server.Server;

/**
 * The proof at the start, by a connection of our own, that what was asked for is so: the port
 * answers by TLS with the certificate of the files, and the server listens nowhere else.
 */
public final class TlsProof {
  private static final int PATIENCE_MILLIS = 5_000;

  private TlsProof() {}

  /** Throws {@link IllegalStateException} where it is not so. */
  public static void require(Server server, Certificates certificates) {
    Connector[] all = server.getConnectors();
    if (all.length != 1 || !all[0].getProtocols().contains("ssl")) {
      throw new IllegalStateException(
          "The server listens unencrypted: " + Arrays.toString(all) + ". It was stopped.");
    }
    NetworkConnector only = (NetworkConnector) all[0];
    try (Socket socket = connected(only)) {
      require(socket, certificates);
    } catch (IOException | GeneralSecurityException e) {
      throw new IllegalStateException(
          "Port " + only.getLocalPort() + " does not answer by TLS: " + e.getMessage(), e);
    }
  }

  private static Socket connected(NetworkConnector at) throws IOException {
    InetAddress host = InetAddress.getByName(at.getHost());
    Socket socket = new Socket();
    socket.setSoTimeout(PATIENCE_MILLIS);
    InetAddress reached = host.isAnyLocalAddress() ? InetAddress.getLoopbackAddress() : host;
    socket.connect(new InetSocketAddress(reached, at.getLocalPort()), PATIENCE_MILLIS);
    return socket;
  }

  private static void require(Socket plain, Certificates certificates)
      throws IOException, GeneralSecurityException {
    SSLContext context = SSLContext.getInstance("TLS");
    context.init(null, new TrustManager[] {new Any()}, null);
    try (SSLSocket socket =
        (SSLSocket)
            context.getSocketFactory().createSocket(plain, "localhost", plain.getPort(), true)) {
      socket.startHandshake();
      byte[] shown = socket.getSession().getPeerCertificates()[0].getEncoded();
      if (!Arrays.equals(shown, certificates.leaf())) {
        throw new IOException("another certificate is shown");
      }
    }
  }

  /** Trusts whatever is shown: it is compared with the file's. */
  private static final class Any extends X509ExtendedTrustManager {
    @Override
    public void checkClientTrusted(X509Certificate[] chain, String type, Socket socket) {}

    @Override
    public void checkServerTrusted(X509Certificate[] chain, String type, Socket socket) {}

    @Override
    public void checkClientTrusted(X509Certificate[] chain, String type, SSLEngine engine) {}

    @Override
    public void checkServerTrusted(X509Certificate[] chain, String type, SSLEngine engine) {}

    @Override
    public void checkClientTrusted(X509Certificate[] chain, String type) {}

    @Override
    public void checkServerTrusted(X509Certificate[] chain, String type) {}

    @Override
    public X509Certificate[] getAcceptedIssuers() {
      return new X509Certificate[0];
    }
  }
}
