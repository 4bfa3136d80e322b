package org.chordlog.harness;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.chordlog.Await;

/** The openssl command, which makes certificates and looks at ports independently of Java. */
public record Openssl(Path folder) {
  private static final Path INVENTED_CONFIG = Path.of("openssl.cnf");

  /** Fails where it ends with another code than 0. */
  public String run(String... arguments) throws Exception {
    Ended ended = ends("", arguments);
    if (ended.code() != 0) {
      throw new AssertionError(List.of(arguments) + ": " + ended.text());
    }
    return ended.text();
  }

  /** What it said, on both outputs, and its exit code. */
  public record Ended(int code, String text) {}

  public Ended ends(String input, String... arguments) throws Exception {
    List<String> all = new ArrayList<>(List.of("openssl"));
    all.addAll(List.of(arguments));
    Path in = Files.writeString(folder.resolve("openssl.in"), input);
    Path out = Files.createTempFile(folder, "openssl", ".out");
    Process process =
        new ProcessBuilder(all)
            .directory(folder.toFile())
            .redirectErrorStream(true)
            .redirectInput(in.toFile())
            .redirectOutput(out.toFile())
            .start();
    try {
      Await.end(process);
    } finally {
      process.destroyForcibly();
    }
    return new Ended(process.exitValue(), Files.readString(out, StandardCharsets.ISO_8859_1));
  }

  /** An issuer of certificates, NAME.pem with NAME.key. */
  public Path issuer(String name) throws Exception {
    run(
        "req",
        "-x509",
        "-newkey",
        "ec",
        "-pkeyopt",
        "ec_paramgen_curve:P-256",
        "-nodes",
        "-days",
        "90",
        "-subj",
        "/CN=" + name,
        "-keyout",
        name + ".key",
        "-out",
        name + ".pem");
    return folder.resolve(name + ".pem");
  }

  /**
   * A certificate of that issuer for localhost, 127.0.0.1 and shop.example, NAME.pem with NAME.key
   * in PKCS#8 form. {@code algorithm}: rsa:2048, ec or ed25519.
   */
  public Path issued(String name, String issuer, int days, String algorithm) throws Exception {
    return issued(name, issuer, days, algorithm, "DNS:localhost,DNS:shop.example,IP:127.0.0.1");
  }

  /** As those above, for the names of {@code subjects}; of −1 day it has ended. */
  public Path issued(String name, String issuer, int days, String algorithm, String subjects)
      throws Exception {
    List<String> request =
        new ArrayList<>(List.of("req", "-newkey", algorithm, "-nodes", "-subj", "/CN=" + name));
    if (algorithm.equals("ec")) {
      request.addAll(List.of("-pkeyopt", "ec_paramgen_curve:P-256"));
    }
    request.addAll(List.of("-keyout", name + ".key", "-out", name + ".csr"));
    run(request.toArray(String[]::new));
    Files.writeString(folder.resolve(INVENTED_CONFIG), "subjectAltName=" + subjects + "\n");
    run(
        "x509",
        "-req",
        "-in",
        name + ".csr",
        "-CA",
        issuer + ".pem",
        "-CAkey",
        issuer + ".key",
        "-CAcreateserial",
        "-days",
        String.valueOf(days),
        "-extfile",
        INVENTED_CONFIG.toString(),
        "-out",
        name + ".pem");
    return folder.resolve(name + ".pem");
  }
}
