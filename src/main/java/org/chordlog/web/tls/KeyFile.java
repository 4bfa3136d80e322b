package org.chordlog.web.tls;

import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.security.KeyFactory;
import java.security.PrivateKey;
import java.security.spec.PKCS8EncodedKeySpec;
import java.util.List;
import org.chordlog.measure.BadInput;
import org.chordlog.web.http.TlsFiles;

/** A PEM file with one private key in PKCS#8 form, not encrypted. */
final class KeyFile {
  private static final String LABEL = "PRIVATE KEY";

  private KeyFile() {}

  /** {@code algorithm}: of the certificate's public key. */
  static PrivateKey read(Path file, String algorithm) {
    PemText pem = PemText.read(TlsFiles.KEY, file);
    if (!pem.has(LABEL)) {
      throw other(file, pem);
    }
    try {
      List<byte[]> blocks = pem.blocks(LABEL);
      if (blocks.size() == 1) {
        return KeyFactory.getInstance(algorithm)
            .generatePrivate(new PKCS8EncodedKeySpec(blocks.get(0)));
      }
    } catch (GeneralSecurityException | IllegalArgumentException e) {
      // said below
    }
    throw bad(
        file,
        "is damaged, or is no " + algorithm + " key as its certificate needs",
        "one key that openssl pkey -noout -text -in " + file + " can show");
  }

  private static BadInput other(Path file, PemText pem) {
    String text = pem.text();
    if (text.contains("ENCRYPTED")) {
      return bad(file, "is encrypted", "a key without a passphrase, which " + mended(file));
    }
    if (text.contains("PRIVATE KEY-----")) {
      return bad(file, "is not in PKCS#8 form", "PKCS#8, which " + mended(file));
    }
    return pem.has("CERTIFICATE")
        ? bad(file, "holds a certificate", "the key; it belongs to " + TlsFiles.CERTIFICATE)
        : bad(file, "holds no PEM key", "PEM in PKCS#8 form, which " + mended(file));
  }

  private static String mended(Path file) {
    return "openssl pkcs8 -topk8 -nocrypt -in " + file + " -out key.pem makes of it";
  }

  private static BadInput bad(Path file, String problem, String allowed) {
    return new BadInput(TlsFiles.KEY, file, problem, allowed);
  }
}
