package org.chordlog.notify.mail;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import org.chordlog.harness.Children;
import org.chordlog.harness.Openssl;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Assumptions;

/**
 * A mail server in a process of its own, by Debian's python3-aiosmtpd, with a certificate of an
 * issuer that openssl made.
 */
public final class MailProcess implements AutoCloseable {
  private static final String PYTHON = "/usr/bin/python3";
  private final Process process;
  private final Path taken;
  private final Path issuer;
  private final int port;

  private MailProcess(Process process, Path taken, Path issuer, int port) {
    this.process = process;
    this.taken = taken;
    this.issuer = issuer;
    this.port = port;
  }

  /** One that takes mails after STARTTLS; skips the test loudly where its parts are missing. */
  public static MailProcess good(Path folder) throws Exception {
    return that("good", folder);
  }

  /** One that behaves as {@code mail-server.py} says. */
  public static MailProcess that(String behaves, Path folder) throws Exception {
    return at("127.0.0.1", behaves, folder);
  }

  static MailProcess at(String address, String behaves, Path folder) throws Exception {
    requireParts();
    Path own = Files.createTempDirectory(folder, "mail-server");
    Openssl openssl = new Openssl(own);
    Path issuer = openssl.issuer("mail-issuer");
    Path certificate = openssl.issued("mail", "mail-issuer", 30, "ec");
    Path taken = Files.createDirectory(own.resolve("taken"));
    Path log = own.resolve("log");
    Process process =
        Children.start(
            new ProcessBuilder(
                    PYTHON,
                    script(own).toString(),
                    address,
                    behaves,
                    taken.toString(),
                    certificate.toString(),
                    own.resolve("mail.key").toString())
                .redirectError(log.toFile()));
    BufferedReader said =
        new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
    String line = said.readLine();
    Assertions.assertTrue(line != null, () -> read(log));
    return new MailProcess(process, taken, issuer, Integer.parseInt(line));
  }

  private static Path script(Path folder) throws IOException {
    Path script = folder.resolve("mail-server.py");
    try (var in = MailProcess.class.getResourceAsStream("/notify/mail-server.py")) {
      Files.copy(Objects.requireNonNull(in), script);
    }
    return script;
  }

  private static void requireParts() throws Exception {
    Process look = new ProcessBuilder(PYTHON, "-c", "import aiosmtpd").start();
    if (look.waitFor() != 0) {
      String missing = "aiosmtpd is missing: install python3-aiosmtpd";
      Assertions.assertFalse(Boolean.parseBoolean(System.getenv("CI")), missing);
      System.err.println("SKIPPED a test of mails: " + missing);
      Assumptions.abort(missing);
    }
  }

  public int port() {
    return port;
  }

  /** The certificate that vouches for its own. */
  public Path issuer() {
    return issuer;
  }

  /** The mails it took, in their order, as they came. */
  public List<String> mails() {
    List<String> all = new ArrayList<>();
    try (Stream<Path> files = Files.list(taken)) {
      files
          .filter(each -> each.toString().endsWith(".eml"))
          .sorted()
          .forEach(each -> all.add(read(each)));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return all;
  }

  /** A header of a mail in one line; empty where it has none. */
  public static String header(String mail, String name) {
    String head = mail.replace("\r\n", "\n").split("\n\n", 2)[0].replaceAll("\n[ \t]+", " ");
    return head.lines()
        .filter(line -> line.startsWith(name + ": "))
        .map(line -> line.substring(name.length() + 2))
        .findFirst()
        .orElse("");
  }

  private static String read(Path file) {
    try {
      return Files.readString(file, StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Override
  public void close() {
    process.destroyForcibly().onExit().join();
  }
}
