package org.chordlog.cli.station;

import java.io.IOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import org.chordlog.file.FileTrouble;
import org.chordlog.measure.BadInput;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** Where the running service is, and who asks. */
class ServiceAddress {
  @Option(
      names = "--service",
      defaultValue = "http://127.0.0.1:8080",
      paramLabel = "URL",
      description = "Address of the service (${DEFAULT-VALUE}).")
  private URI service;

  @Option(
      names = "--by",
      defaultValue = "${sys:user.name}",
      paramLabel = "NAME",
      description = "Who asks, for the record (your user name).")
  private String by;

  @Option(
      names = "--token-file",
      paramLabel = "FILE",
      description = "File with the token of a program; needed where people sign in.")
  private @Nullable Path tokenFile;

  @Option(
      names = "--ca-file",
      paramLabel = "FILE",
      description =
          "Certificate in PEM that vouches for the service at an https address; without it those"
              + " that Java trusts do.")
  private @Nullable Path caFile;

  @Option(names = "--json", description = "Print JSON.")
  private boolean json;

  boolean json() {
    return json;
  }

  /** Of one station, or of none where that is empty. */
  ServiceClient client(String station) {
    return new ServiceClient(
        service, station, by, tokenFile == null ? "" : token(tokenFile), caFile);
  }

  private static String token(Path file) {
    String token = read(file);
    if (token.isEmpty()) {
      throw new BadInput("--token-file", file, "is empty", "a file with the token");
    }
    return token;
  }

  static String read(Path tokenFile) {
    try {
      return Files.readString(tokenFile).strip();
    } catch (IOException e) {
      throw new BadInput(
          "--token-file", tokenFile, FileTrouble.reading(tokenFile, e), "a file with the token");
    }
  }
}
