package org.chordlog.web.tls;

import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import org.chordlog.harness.Openssl;
import org.chordlog.web.http.TlsFiles;
import org.eclipse.jetty.server.HttpConnectionFactory;
import org.eclipse.jetty.server.Server;
import org.eclipse.jetty.server.ServerConnector;
import org.eclipse.jetty.server.SslConnectionFactory;
import org.eclipse.jetty.util.thread.ScheduledExecutorScheduler;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Servers that are not as they were asked to be are found out. */
final class TlsProofTest {
  @TempDir Path folder;
  private final Server server = new Server();
  private Openssl openssl;

  @BeforeEach
  void issuer() throws Exception {
    openssl = new Openssl(folder);
    openssl.issuer("issuer");
  }

  @AfterEach
  void stop() throws Exception {
    server.stop();
  }

  private Certificates certificates(String name) throws Exception {
    Path certificate = openssl.issued(name, "issuer", 60, "ec");
    TlsFiles files = new TlsFiles(certificate, folder.resolve(name + ".key"));
    return new Certificates(files, new ScheduledExecutorScheduler());
  }

  private void listen(ServerConnector connector) throws Exception {
    connector.setHost("127.0.0.1");
    server.addConnector(connector);
    connector.start();
  }

  private ServerConnector tls(Certificates of) {
    HttpConnectionFactory http = new HttpConnectionFactory();
    return new ServerConnector(
        server, new SslConnectionFactory(of.factory(), http.getProtocol()), http);
  }

  private void refused(Certificates wanted, String words) {
    String said =
        assertThrows(IllegalStateException.class, () -> TlsProof.require(server, wanted))
            .getMessage();
    assertTrue(String.valueOf(said).contains(words), said);
  }

  @Test
  void aPortWithoutTlsAnAdditionalOneAndAnotherCertificateAreRefused() throws Exception {
    Certificates wanted = certificates("one");
    server.start();
    listen(tls(wanted));
    TlsProof.require(server, wanted);
    refused(certificates("two"), "another certificate is shown");
    listen(new ServerConnector(server));
    refused(wanted, "listens unencrypted");
  }

  @Test
  void aPlainPortAloneIsRefused() throws Exception {
    listen(new ServerConnector(server));
    refused(certificates("one"), "listens unencrypted");
  }
}
