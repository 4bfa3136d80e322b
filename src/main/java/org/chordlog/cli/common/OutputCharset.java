package org.chordlog.cli.common;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.List;

/**
 * What is printed where the locale names no language ("C", as a bare server, a container and cron
 * have it): Java takes ASCII there and prints ? for ±, − and names, though terminals and files take
 * UTF-8.
 */
public final class OutputCharset {
  private OutputCharset() {}

  /** For this process; call before anything is printed. */
  public static void use() {
    if (Charset.defaultCharset().equals(StandardCharsets.US_ASCII)) {
      for (String stream : List.of("sun.stdout.encoding", "sun.stderr.encoding")) {
        if (System.getProperty(stream) == null) { // one that was named is meant
          System.setProperty(stream, StandardCharsets.UTF_8.name());
        }
      }
    }
  }
}
