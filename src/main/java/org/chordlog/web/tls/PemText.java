package org.chordlog.web.tls;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Base64;
import java.util.List;
import java.util.regex.Pattern;
import org.chordlog.file.FileTrouble;
import org.chordlog.measure.BadInput;

/** The blocks of a PEM file (RFC 7468), by their labels. */
record PemText(String text) {
  private static final int MOST_BYTES = 1 << 20;

  /** What can't be read is refused under the name of that setting. */
  static PemText read(String setting, Path file) {
    try {
      if (Files.size(file) > MOST_BYTES) {
        throw new BadInput(setting, file, "is too large for a PEM file", "at most 1 MiB");
      }
      return new PemText(Files.readString(file, StandardCharsets.ISO_8859_1));
    } catch (IOException e) {
      throw new BadInput(
          setting, file, FileTrouble.reading(file, e), "a PEM file that the service may read");
    }
  }

  boolean has(String label) {
    return text.contains("-----BEGIN " + label + "-----");
  }

  /** The bytes of each block of that label; one that is damaged is refused. */
  List<byte[]> blocks(String label) {
    return Pattern.compile(
            "-----BEGIN " + label + "-----([A-Za-z0-9+/=\\s]*)-----END " + label + "-----")
        .matcher(text)
        .results()
        .map(each -> Base64.getMimeDecoder().decode(each.group(1)))
        .toList();
  }
}
