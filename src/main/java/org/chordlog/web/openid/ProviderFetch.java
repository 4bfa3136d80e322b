package org.chordlog.web.openid;

import com.nimbusds.jose.util.Resource;
import com.nimbusds.jose.util.ResourceRetriever;
import com.nimbusds.oauth2.sdk.ParseException;
import com.nimbusds.oauth2.sdk.http.HTTPRequestSender;
import com.nimbusds.oauth2.sdk.http.HTTPResponse;
import com.nimbusds.oauth2.sdk.http.ReadOnlyHTTPRequest;
import com.nimbusds.oauth2.sdk.http.ReadOnlyHTTPResponse;
import java.io.IOException;
import java.io.InputStream;
import java.io.InterruptedIOException;
import java.net.URI;
import java.net.URISyntaxException;
import java.net.URL;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import javax.net.ssl.SSLContext;
import org.jspecify.annotations.Nullable;

/**
 * Asks the provider, over the network: waits 5 s at most for an answer to begin, follows no
 * redirect, reads 256 KiB at most. Any thread.
 */
final class ProviderFetch implements ResourceRetriever, HTTPRequestSender {
  private static final Duration PATIENCE = Duration.ofSeconds(5);
  private static final int MOST_BYTES = 262_144;
  private static final String TYPE = "Content-Type";
  private final HttpClient client;

  /** {@code trust}: who vouches for the provider; null for those that Java knows. */
  ProviderFetch(@Nullable SSLContext trust) {
    HttpClient.Builder made =
        HttpClient.newBuilder().connectTimeout(PATIENCE).followRedirects(HttpClient.Redirect.NEVER);
    client = (trust == null ? made : made.sslContext(trust)).build();
  }

  @Override
  public Resource retrieveResource(URL address) throws IOException {
    HttpResponse<InputStream> answer = sent(HttpRequest.newBuilder(uri(address)).GET());
    if (answer.statusCode() != 200) {
      throw new IOException(address + " answered " + answer.statusCode());
    }
    return new Resource(body(answer), type(answer));
  }

  @Override
  public ReadOnlyHTTPResponse send(ReadOnlyHTTPRequest request) throws IOException {
    String body = request.getBody();
    HttpRequest.Builder made =
        HttpRequest.newBuilder(request.getURI())
            .method(request.getMethod().name(), BodyPublishers.ofString(body == null ? "" : body));
    request
        .getHeaderMap()
        .forEach((name, values) -> values.forEach(value -> made.header(name, value)));
    HttpResponse<InputStream> answer = sent(made);
    HTTPResponse told = new HTTPResponse(answer.statusCode());
    told.setHeader(TYPE, type(answer));
    told.setBody(body(answer));
    return told;
  }

  private static URI uri(URL address) throws IOException {
    try {
      return address.toURI();
    } catch (URISyntaxException e) {
      throw new IOException(address + " is not an address", e);
    }
  }

  private HttpResponse<InputStream> sent(HttpRequest.Builder request) throws IOException {
    try {
      return client.send(request.timeout(PATIENCE).build(), BodyHandlers.ofInputStream());
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new InterruptedIOException("the service is stopping");
    } catch (IllegalArgumentException e) {
      throw new IOException(e);
    }
  }

  private static String type(HttpResponse<InputStream> answer) {
    return answer.headers().firstValue(TYPE).orElse("application/json");
  }

  private static String body(HttpResponse<InputStream> answer) throws IOException {
    try (InputStream in = answer.body()) {
      byte[] bytes = in.readNBytes(MOST_BYTES + 1);
      if (bytes.length > MOST_BYTES) {
        throw new IOException(answer.uri() + " answered more than " + MOST_BYTES + " bytes");
      }
      return new String(bytes, StandardCharsets.UTF_8);
    }
  }

  /** Refuses what is not of the form that the standard has. */
  interface Parse<T> {
    T of(String text) throws ParseException;
  }

  <T> T get(URI address, Parse<T> parse) throws IOException {
    try {
      return parse.of(retrieveResource(address.toURL()).getContent());
    } catch (ParseException | IllegalArgumentException e) {
      throw new IOException(address + " answered something else", e);
    }
  }
}
