package org.chordlog.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import org.chordlog.Await;
import org.chordlog.harness.Children;
import org.chordlog.harness.ServiceProcess;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The first start beyond this computer prints by what code its first administrator begins. */
final class FirstStartIT {
  @TempDir Path directory;

  private Process serve() throws Exception {
    List<String> command = ServiceProcess.briefJar("-Xmx300m");
    command.addAll(List.of("serve", "--host", "0.0.0.0", "--unencrypted", "--port", "0"));
    command.addAll(List.of("--data", directory.resolve("data").toString()));
    return Children.start(
        new ProcessBuilder(command).redirectError(directory.resolve("errors").toFile()));
  }

  @Test
  void theCodeIsNewAtEachStartUntilItWasUsed() throws Exception {
    String first = code(serve(), false);
    String second = code(serve(), true);
    assertTrue(!first.equals(second), first);
    Process third = serve();
    BufferedReader out = third.inputReader(StandardCharsets.UTF_8);
    String form = "{\"name\": \"administrator\", \"password\": \"three wide rollers\"}";
    assertEquals(204, posted(address(out), "api/session", form));
    assertFalse(out.ready(), "another code is printed");
    end(third);
  }

  private String code(Process process, boolean used) throws Exception {
    BufferedReader out = process.inputReader(StandardCharsets.UTF_8);
    String address = address(out);
    String said = out.readLine();
    String code = said.replaceFirst(".*the code ([A-Z0-9-]+),.*", "$1");
    assertEquals(19, code.length(), said);
    HttpClient client = HttpClient.newHttpClient();
    HttpRequest look = HttpRequest.newBuilder(URI.create(address + "api/stations")).build();
    assertEquals(401, client.send(look, BodyHandlers.ofString()).statusCode());
    if (used) {
      String form = "{\"name\": \"administrator\", \"code\": \"%s\", \"password\": \"%s\"}";
      String sent = form.formatted(code, "three wide rollers");
      assertEquals(204, posted(address, "api/session/activation", sent));
    }
    end(process);
    return code;
  }

  private static String address(BufferedReader out) throws Exception {
    return out.readLine().replaceFirst(".*:(\\d+)/", "http://127.0.0.1:$1/");
  }

  private static int posted(String address, String path, String body) throws Exception {
    HttpRequest request =
        HttpRequest.newBuilder(URI.create(address + path))
            .header("Content-Type", "application/json")
            .POST(BodyPublishers.ofString(body))
            .build();
    return HttpClient.newHttpClient().send(request, BodyHandlers.ofString()).statusCode();
  }

  private static void end(Process process) throws Exception {
    process.destroy();
    Await.end(process);
  }
}
