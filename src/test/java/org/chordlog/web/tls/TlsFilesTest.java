package org.chordlog.web.tls;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import org.chordlog.harness.Openssl;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Fault;
import org.chordlog.web.http.TlsFiles;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Files made by openssl; each wrong one is refused by its setting, with the command that helps. */
final class TlsFilesTest {
  @TempDir static Path folder;

  @BeforeAll
  static void files() throws Exception {
    Openssl openssl = new Openssl(folder);
    openssl.issuer("issuer");
    openssl.issued("one", "issuer", 60, "rsa:2048");
    openssl.issued("two", "issuer", 60, "ec");
    openssl.issued("three", "issuer", 60, "ed25519");
    openssl.run("pkcs8", "-topk8", "-in", "one.key", "-passout", "pass:secret", "-out", "locked");
    openssl.run("rsa", "-traditional", "-in", "one.key", "-out", "old.key");
    openssl.run("x509", "-in", "one.pem", "-outform", "DER", "-out", "one.der");
    openssl.run(
        "pkcs12",
        "-export",
        "-in",
        "one.pem",
        "-inkey",
        "one.key",
        "-passout",
        "pass:secret",
        "-out",
        "one.p12");
    Files.writeString(
        folder.resolve("turned.pem"),
        Files.readString(folder.resolve("issuer.pem"))
            + Files.readString(folder.resolve("one.pem")));
    Files.writeString(
        folder.resolve("chain.pem"),
        Files.readString(folder.resolve("one.pem"))
            + Files.readString(folder.resolve("issuer.pem")));
    Files.writeString(
        folder.resolve("damaged.pem"),
        Files.readString(folder.resolve("one.pem")).replace("MII", "MIX"));
  }

  private static TlsIdentity read(String certificate, String key) {
    return TlsIdentity.read(new TlsFiles(folder.resolve(certificate), folder.resolve(key)));
  }

  private static void refused(String certificate, String key, String setting, String help) {
    Fault fault =
        assertThrows(BadInput.class, () -> read(certificate, key), certificate).faults().get(0);
    assertEquals(setting, fault.field());
    String said = fault.problem() + "; " + fault.allowed();
    assertTrue(said.contains(help), said);
  }

  @Test
  void keysOfEachKindAndAChainAreRead() throws Exception {
    assertEquals(Set.of("localhost", "shop.example"), read("chain.pem", "one.key").names());
    assertEquals(2, read("chain.pem", "one.key").chain().size());
    assertEquals("EC", read("two.pem", "two.key").key().getAlgorithm());
    assertTrue(read("three.pem", "three.key").keyStore().isKeyEntry("service"));
  }

  @Test
  void aWrongKeyNamesItsSettingAndTheCommandThatMendsIt() {
    String mended = "openssl pkcs8 -topk8 -nocrypt -in " + folder;
    refused("one.pem", "locked", TlsFiles.KEY, "is encrypted");
    refused("one.pem", "locked", TlsFiles.KEY, mended);
    refused("one.pem", "old.key", TlsFiles.KEY, mended);
    refused("one.pem", "two.key", TlsFiles.KEY, "is no RSA key");
    refused("one.pem", "one.p12", TlsFiles.KEY, "holds no PEM key");
    refused("one.pem", "two.pem", TlsFiles.KEY, "holds a certificate");
    refused("one.pem", "none.key", TlsFiles.KEY, "does not exist");
    refused("issuer.pem", "two.key", TlsFiles.KEY, "does not belong to the certificate");
  }

  @Test
  void aWrongCertificateNamesItsSettingAndTheCommandThatMendsIt() {
    refused("one.der", "one.key", TlsFiles.CERTIFICATE, "openssl x509 -in " + folder);
    refused("one.p12", "one.key", TlsFiles.CERTIFICATE, "openssl pkcs12 -nokeys -in " + folder);
    refused("one.key", "one.key", TlsFiles.CERTIFICATE, "holds a private key");
    refused("turned.pem", "one.key", TlsFiles.CERTIFICATE, "cat service.pem issuer.pem");
    refused("damaged.pem", "one.key", TlsFiles.CERTIFICATE, "is damaged");
    refused("none.pem", "one.key", TlsFiles.CERTIFICATE, "does not exist");
  }
}
