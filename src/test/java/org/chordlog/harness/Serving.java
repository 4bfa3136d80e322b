package org.chordlog.harness;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import org.chordlog.Patience;

/** A service that answers. */
interface Serving extends AutoCloseable {
  HttpClient CLIENT = HttpClient.newBuilder().connectTimeout(Patience.now()).build();

  URI address();

  default HttpResponse<String> get(String path) throws IOException, InterruptedException {
    HttpRequest request =
        HttpRequest.newBuilder(address().resolve(path)).timeout(Patience.now()).build();
    return CLIENT.send(request, BodyHandlers.ofString());
  }

  /** The body; refuses any answer but 200. */
  default String body(String path) throws IOException, InterruptedException {
    HttpResponse<String> answer = get(path);
    if (answer.statusCode() != 200) {
      throw new IOException(path + " answered " + answer.statusCode() + ": " + answer.body());
    }
    return answer.body();
  }

  @Override
  void close();
}
