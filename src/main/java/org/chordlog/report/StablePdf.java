package org.chordlog.report;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Replaces the random tags of font subsets and the random file id by derived ones of the same
 * length, so that equal inputs give equal bytes.
 */
final class StablePdf {
  private static final Pattern SUBSET = Pattern.compile("/([A-Z]{6})\\+");
  private static final Pattern ID = Pattern.compile("/ID ?\\[<([0-9a-f]{32})><([0-9a-f]{32})>\\]");

  private StablePdf() {}

  static byte[] settle(byte[] pdf) {
    String text = new String(pdf, StandardCharsets.ISO_8859_1);
    Map<String, String> tags = new HashMap<>();
    text =
        SUBSET
            .matcher(text)
            .replaceAll(found -> "/" + tags.computeIfAbsent(found.group(1), t -> tag(tags)) + "+");
    Matcher id = ID.matcher(text);
    if (id.find()) {
      String blank =
          id.replaceAll(found -> found.group().replaceAll("[0-9a-f]{32}", "0".repeat(32)));
      String digest = digest(blank);
      text = id.replaceAll(found -> found.group().replaceAll("[0-9a-f]{32}", digest));
    }
    return text.getBytes(StandardCharsets.ISO_8859_1);
  }

  private static String tag(Map<String, String> tags) {
    return "CHORD" + (char) ('A' + tags.size() % 26);
  }

  private static String digest(String text) {
    try {
      byte[] hash =
          MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.ISO_8859_1));
      return HexFormat.of().formatHex(hash).substring(0, 32);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException(e);
    }
  }
}
