package org.chordlog.web;

import java.net.InetSocketAddress;
import java.net.SocketAddress;
import java.util.Arrays;
import java.util.List;
import org.chordlog.web.http.Reach;
import org.eclipse.jetty.http.HttpFields;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.http.HttpURI;
import org.eclipse.jetty.server.ConnectionMetaData;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.util.HostPort;
import org.jspecify.annotations.Nullable;

/**
 * A request as its sender made it: where it came through a trusted proxy, its address, host and
 * scheme are those that the proxy passes on in X-Forwarded-For, -Host and -Proto. Of several
 * addresses the last one that is no trusted proxy counts, since what comes before it may be made up
 * by the sender. Anybody else's word is not looked at.
 */
final class BehindProxy extends Request.Wrapper {
  private static final String METHOD_OVERRIDE = "X-HTTP-Method-Override";
  private final HttpFields headers;
  private final ConnectionMetaData connection;
  private final boolean secure;
  private final HttpURI place;

  private BehindProxy(Request request, @Nullable Reach trusted) {
    super(request);
    HttpFields sent = request.getHeaders();
    HttpFields.Mutable kept = HttpFields.build(sent).remove(METHOD_OVERRIDE);
    String host = trusted == null ? "" : last(sent, HttpHeader.X_FORWARDED_HOST);
    headers = (host.isEmpty() ? kept : kept.put(HttpHeader.HOST, host)).asImmutable();
    connection = connection(request, trusted);
    place = host.isEmpty() ? request.getHttpURI() : at(request.getHttpURI(), host);
    secure =
        request.isSecure()
            || (trusted != null && last(sent, HttpHeader.X_FORWARDED_PROTO).equals("https"));
  }

  /** What is no host and port is left to be refused as a name that is not answered. */
  private static HttpURI at(HttpURI real, String host) {
    HostPort given = HostPort.unsafe(host);
    return HttpURI.build(real).authority(given.getHost(), given.getPort()).asImmutable();
  }

  /** Also without a header that would put another method in place of the one in the first line. */
  static Request of(Request request, Reach reach) {
    return new BehindProxy(request, reach.trusts(Request.getRemoteAddr(request)) ? reach : null);
  }

  private static ConnectionMetaData connection(Request request, @Nullable Reach trusted) {
    ConnectionMetaData real = request.getConnectionMetaData();
    String sender = trusted == null ? "" : sender(request.getHeaders(), trusted);
    return sender.isEmpty() ? real : new From(real, InetSocketAddress.createUnresolved(sender, 0));
  }

  /** Empty where none is passed on. */
  private static String sender(HttpFields sent, Reach trusted) {
    List<String> passed = all(sent, HttpHeader.X_FORWARDED_FOR);
    for (int i = passed.size() - 1; i >= 0; i--) {
      if (!trusted.trusts(passed.get(i))) {
        return passed.get(i);
      }
    }
    return passed.isEmpty() ? "" : passed.get(0);
  }

  private static String last(HttpFields sent, HttpHeader header) {
    List<String> all = all(sent, header);
    return all.isEmpty() ? "" : all.get(all.size() - 1);
  }

  private static List<String> all(HttpFields sent, HttpHeader header) {
    return sent.getValuesList(header).stream()
        .flatMap(each -> Arrays.stream(each.split(",", -1)))
        .map(String::strip)
        .filter(each -> !each.isEmpty())
        .toList();
  }

  @Override
  public HttpFields getHeaders() {
    return headers;
  }

  @Override
  public HttpURI getHttpURI() {
    return place;
  }

  @Override
  public ConnectionMetaData getConnectionMetaData() {
    return connection;
  }

  @Override
  public boolean isSecure() {
    return secure;
  }

  /** The connection, as if it came from there. */
  private static final class From extends ConnectionMetaData.Wrapper {
    private final SocketAddress sender;

    From(ConnectionMetaData real, SocketAddress sender) {
      super(real);
      this.sender = sender;
    }

    @Override
    public SocketAddress getRemoteSocketAddress() {
      return sender;
    }
  }
}
