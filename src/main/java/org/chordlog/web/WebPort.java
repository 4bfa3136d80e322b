package org.chordlog.web;

import java.util.Optional;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import org.chordlog.web.http.TlsFiles;
import org.chordlog.web.http.WebSettings;
import org.chordlog.web.tls.Certificates;
import org.chordlog.web.tls.TlsProof;
import org.chordlog.web.tls.TlsState;
import org.eclipse.jetty.server.ConnectionFactory;
import org.eclipse.jetty.server.Connector;
import org.eclipse.jetty.server.HttpConfiguration;
import org.eclipse.jetty.server.HttpConnectionFactory;
import org.eclipse.jetty.server.NetworkConnectionLimit;
import org.eclipse.jetty.server.SecureRequestCustomizer;
import org.eclipse.jetty.server.Server;
import org.eclipse.jetty.server.ServerConnector;
import org.eclipse.jetty.server.SslConnectionFactory;
import org.eclipse.jetty.util.thread.ScheduledExecutorScheduler;
import org.jspecify.annotations.Nullable;

/** The one port that the server listens at, by TLS where files for it are given. */
final class WebPort {
  /** Further ones wait until an idle one is closed; event streams send more often than that. */
  private static final int MOST_CONNECTIONS = 256;

  private static final long IDLE_WHEN_FULL_MILLIS = 12_000;
  private static final long IDLE_AT_STOP_MILLIS = 100;
  private static final int USUAL_HTTPS = 443;
  private final WebSettings settings;
  private final ScheduledExecutorScheduler scheduler = new ScheduledExecutorScheduler("tls", true);
  private final @Nullable Certificates certificates;

  /** Reads the certificate; refused where it can't be used. */
  WebPort(WebSettings settings) {
    this.settings = settings;
    TlsFiles files = settings.reach().tls();
    certificates = files == null ? null : new Certificates(files, scheduler);
  }

  void http(HttpConfiguration http) {
    http.setSendServerVersion(false);
    http.addCustomizer((request, answer) -> BehindProxy.of(request, settings.reach()));
  }

  Connector connector(Server server, HttpConfiguration http) {
    ServerConnector connector = new ServerConnector(server, 1, 1, protocols(http));
    connector.setHost(settings.host());
    connector.setPort(settings.port());
    connector.setShutdownIdleTimeout(IDLE_AT_STOP_MILLIS);
    NetworkConnectionLimit limit = new NetworkConnectionLimit(MOST_CONNECTIONS, connector);
    limit.setEndPointIdleTimeout(IDLE_WHEN_FULL_MILLIS);
    connector.addBean(limit);
    connector.addBean(new AddressLimit(settings.reach()));
    connector.addBean(new SlowClients(connector));
    if (certificates != null) {
      connector.addBean(scheduler);
      connector.addBean(certificates);
    }
    return connector;
  }

  private ConnectionFactory[] protocols(HttpConfiguration http) {
    if (certificates == null) {
      return new ConnectionFactory[] {new HttpConnectionFactory(http)};
    }
    HttpConfiguration https = new HttpConfiguration(http);
    https.getCustomizers().add(0, secure());
    HttpConnectionFactory inside = new HttpConnectionFactory(https);
    return new ConnectionFactory[] {
      new SslConnectionFactory(certificates.factory(), inside.getProtocol()), inside
    };
  }

  /**
   * Pages may be called by an address, which no certificate need name. HSTS (RFC 6797) binds a
   * whole host with all its ports, so it is sent only where this service is the host's https.
   */
  private SecureRequestCustomizer secure() {
    SecureRequestCustomizer secure = new SecureRequestCustomizer(false);
    if (settings.port() == USUAL_HTTPS) {
      secure.setStsMaxAge(365, TimeUnit.DAYS);
    }
    return secure;
  }

  /** Proves what was promised; for a server that has started. */
  void prove(Server server) {
    if (certificates != null) {
      TlsProof.require(server, certificates);
    }
  }

  WebSettings settings() {
    return settings;
  }

  Set<String> certifiedNames() {
    return certificates == null ? Set.of() : certificates.names();
  }

  Optional<TlsState> tls() {
    return Optional.ofNullable(certificates).map(Certificates::state);
  }
}
