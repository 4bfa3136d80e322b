package org.chordlog.notify.webhook;

import java.io.IOException;
import java.net.ConnectException;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.net.SocketTimeoutException;
import java.net.UnknownHostException;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.net.http.HttpTimeoutException;
import java.nio.channels.UnresolvedAddressException;
import java.time.Duration;
import java.time.Instant;
import javax.net.ssl.SSLException;
import javax.net.ssl.SSLParameters;
import javax.net.ssl.SSLSocket;
import org.chordlog.measure.BadInput;
import org.chordlog.notify.channel.Outcome;
import org.chordlog.notify.channel.Webhook;
import org.chordlog.trust.IssuerFile;

/** Calls one webhook. One thread at a time. */
public final class WebhookSender {
  private static final Duration PATIENCE = Duration.ofSeconds(5);
  private static final int GONE = 410;
  private final Webhook webhook;
  private final HttpClient client;

  public WebhookSender(Webhook webhook) {
    this.webhook = webhook;
    HttpClient.Builder builder =
        HttpClient.newBuilder()
            .version(HttpClient.Version.HTTP_1_1)
            .connectTimeout(PATIENCE)
            .followRedirects(HttpClient.Redirect.NEVER);
    client =
        (webhook.caFile() == null
                ? builder
                : builder.sslContext(IssuerFile.trusting("caFile", webhook.caFile())))
            .build();
  }

  /**
   * Sends a JSON body under that id, which is the same at each attempt; {@code now} is the time of
   * this one.
   */
  public Outcome send(String id, String body, Instant now) {
    try {
      HttpRequest request =
          HttpRequest.newBuilder(webhook.url())
              .timeout(PATIENCE)
              .header("Content-Type", "application/json")
              .header("webhook-id", id)
              .header("webhook-timestamp", Long.toString(now.getEpochSecond()))
              .header(
                  "webhook-signature",
                  Signature.of(webhook.secrets(), id, now.getEpochSecond(), body))
              .POST(BodyPublishers.ofString(body))
              .build();
      return outcome(client.send(request, BodyHandlers.discarding()));
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return new Outcome.Later(place() + " was not waited for: the service stops");
    } catch (IOException e) {
      return new Outcome.Later(place() + " " + problem(e));
    } catch (BadInput e) {
      return new Outcome.Later(String.valueOf(e.getMessage()));
    }
  }

  /** Connects, and encrypts where the address asks for it; sends nothing. */
  public Outcome check() {
    boolean encrypted = "https".equals(webhook.url().getScheme());
    int port = webhook.url().getPort();
    String host = webhook.url().getHost();
    try (Socket socket = new Socket()) {
      int usual = encrypted ? 443 : 80;
      socket.connect(
          new InetSocketAddress(host, port < 0 ? usual : port), (int) PATIENCE.toMillis());
      socket.setSoTimeout((int) PATIENCE.toMillis());
      if (encrypted) {
        encrypt(socket, host);
      }
      return new Outcome.Delivered();
    } catch (UnknownHostException e) {
      return new Outcome.Later(place() + " is not known by that name");
    } catch (SocketTimeoutException e) {
      return new Outcome.Later(place() + " did not answer within " + PATIENCE.toSeconds() + " s");
    } catch (IOException e) {
      return new Outcome.Later(place() + " " + problem(e));
    }
  }

  private void encrypt(Socket plain, String host) throws IOException {
    try (SSLSocket socket =
        (SSLSocket)
            client
                .sslContext()
                .getSocketFactory()
                .createSocket(plain, host, plain.getPort(), true)) {
      SSLParameters parameters = socket.getSSLParameters();
      parameters.setEndpointIdentificationAlgorithm("HTTPS");
      socket.setSSLParameters(parameters);
      socket.startHandshake();
    }
  }

  private String place() {
    return webhook.url().getAuthority();
  }

  private Outcome outcome(HttpResponse<?> answer) {
    int status = answer.statusCode();
    if (status / 100 == 2) {
      return new Outcome.Delivered();
    }
    if (status == GONE) {
      return new Outcome.Never(place() + " says that this webhook is gone (410)");
    }
    return new Outcome.Later(
        status / 100 == 3
            ? place() + " answered " + status + ": its address moved, and is not followed"
            : place() + " answered " + status);
  }

  private static String problem(IOException e) {
    if (e instanceof HttpTimeoutException) {
      return "did not answer within " + PATIENCE.toSeconds() + " s";
    }
    if (e instanceof SSLException) {
      return "shows a certificate that is not trusted: " + e.getMessage();
    }
    if (e instanceof ConnectException) {
      return e.getCause() instanceof UnresolvedAddressException
          ? "is not known by that name"
          : "takes no connection";
    }
    return "broke off: " + e.getMessage();
  }
}
