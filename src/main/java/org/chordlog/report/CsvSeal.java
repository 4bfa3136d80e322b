package org.chordlog.report;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.chordlog.store.MeasuringPart;
import org.chordlog.store.SealTip;
import org.jspecify.annotations.Nullable;

/**
 * The last line of readings as CSV, a comment: the newest entry of the chain of hashes over the
 * records at that time, the program, and the SHA-256 of all bytes before the line. Whoever changes
 * the file can make the sum anew; the records themselves tell whether its lines are theirs.
 */
public record CsvSeal(SealTip tip, String program, String measuringPart, String sha256) {
  public static final String BEGIN = "# Chordlog seal 1 ";
  private static final Pattern FORM =
      Pattern.compile(
          BEGIN
              + "database=(\\S+) entry=(\\d{1,18}):([0-9a-f]{64}) program=(\\S+)"
              + " measuring-part=([0-9a-f]{64}) sha256=([0-9a-f]{64})\\s*");

  static CsvSeal of(SealTip tip, String sha256) {
    return new CsvSeal(tip, MeasuringPart.version(), MeasuringPart.sha256(), sha256);
  }

  String line() {
    return BEGIN
        + "database=%s entry=%s program=%s measuring-part=%s sha256=%s\r\n"
            .formatted(tip.database(), tip.anchor(), program, measuringPart, sha256);
  }

  /** Null for another line. */
  public static @Nullable CsvSeal read(String line) {
    Matcher found = FORM.matcher(line);
    return found.matches()
        ? new CsvSeal(
            new SealTip(found.group(1), Long.parseLong(found.group(2)), found.group(3)),
            found.group(4),
            found.group(5),
            found.group(6))
        : null;
  }

  /** Takes the bytes before the line. */
  static final class Sum implements Appendable {
    private final Appendable to;
    private final MessageDigest sha = sha();

    Sum(Appendable to) {
      this.to = to;
    }

    @Override
    public Sum append(CharSequence text) throws IOException {
      to.append(text);
      sha.update(text.toString().getBytes(StandardCharsets.UTF_8));
      return this;
    }

    @Override
    public Sum append(CharSequence text, int start, int end) throws IOException {
      return append(text.subSequence(start, end));
    }

    @Override
    public Sum append(char character) throws IOException {
      return append(String.valueOf(character));
    }

    String text() {
      return HexFormat.of().formatHex(sha.digest());
    }
  }

  private static MessageDigest sha() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }

  /** SHA-256 of the first bytes, in hexadecimal digits. */
  public static String sum(byte[] bytes, int length) {
    MessageDigest sha = sha();
    sha.update(bytes, 0, length);
    return HexFormat.of().formatHex(sha.digest());
  }
}
