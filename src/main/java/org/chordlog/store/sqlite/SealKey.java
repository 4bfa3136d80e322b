package org.chordlog.store.sqlite;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.security.KeyFactory;
import java.security.KeyPair;
import java.security.KeyPairGenerator;
import java.security.NoSuchAlgorithmException;
import java.security.PrivateKey;
import java.security.PublicKey;
import java.security.Signature;
import java.security.spec.PKCS8EncodedKeySpec;
import java.security.spec.X509EncodedKeySpec;
import java.util.Base64;
import java.util.HexFormat;
import org.chordlog.measure.BadInput;
import org.chordlog.store.sql.Hashes;

/**
 * The key that signs checkpoints: Ed25519 (RFC 8032), in a file that only its owner may read, as
 * two PEM blocks (private, public; RFC 8410), which openssl reads too.
 */
record SealKey(PrivateKey secret, String shown) {
  static final String FILE_NAME = "seal-key.pem";
  private static final String ALGORITHM = "Ed25519";
  private static final int FINGERPRINT_BYTES = 8;
  private static final String PRIVATE = "PRIVATE KEY";
  private static final String PUBLIC = "PUBLIC KEY";

  /** Of the data directory; made where there is none beside the database. */
  static SealKey of(Path database) throws IOException {
    Path file = SealKeyPlace.of(database);
    try {
      if (Files.notExists(file) || Files.size(file) == 0) {
        make(file);
      }
      return read(file);
    } catch (GeneralSecurityException | IllegalArgumentException e) {
      throw new BadInput(
          "seal key", file, "can't be used (" + e.getMessage() + ")", "an Ed25519 key in PEM");
    }
  }

  /** A new one in that file. */
  static void make(Path file) throws IOException {
    KeyPair pair;
    try {
      pair = KeyPairGenerator.getInstance(ALGORITHM).generateKeyPair();
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has " + ALGORITHM, e);
    }
    OwnFiles.create(file);
    Files.writeString(
        file,
        pem(PRIVATE, pair.getPrivate().getEncoded()) + pem(PUBLIC, pair.getPublic().getEncoded()),
        StandardCharsets.US_ASCII);
    SyncedFiles.sync(file);
  }

  private static SealKey read(Path file) throws IOException, GeneralSecurityException {
    String text = Files.readString(file, StandardCharsets.US_ASCII);
    PrivateKey secret =
        KeyFactory.getInstance(ALGORITHM)
            .generatePrivate(new PKCS8EncodedKeySpec(block(text, PRIVATE)));
    SealKey key = new SealKey(secret, Base64.getEncoder().encodeToString(block(text, PUBLIC)));
    if (!verifies(key.shown, "its halves", key.sign("its halves"))) {
      throw new GeneralSecurityException("its two halves do not belong together");
    }
    return key;
  }

  private static String pem(String name, byte[] bytes) {
    String body = Base64.getEncoder().encodeToString(bytes);
    return "-----BEGIN " + name + "-----\n" + body + "\n-----END " + name + "-----\n";
  }

  private static byte[] block(String text, String name) throws GeneralSecurityException {
    String begin = "-----BEGIN " + name + "-----";
    int from = text.indexOf(begin);
    int to = text.indexOf("-----END " + name + "-----");
    if (from < 0 || to < from) {
      throw new GeneralSecurityException("it has no " + name);
    }
    return Base64.getMimeDecoder().decode(text.substring(from + begin.length(), to));
  }

  /** In hexadecimal digits. */
  String sign(String text) throws GeneralSecurityException {
    Signature signature = Signature.getInstance(ALGORITHM);
    signature.initSign(secret);
    signature.update(text.getBytes(StandardCharsets.UTF_8));
    return HexFormat.of().formatHex(signature.sign());
  }

  /** Whether a public key (X.509, Base64) verifies the signature; false for nonsense. */
  static boolean verifies(String shown, String text, String signed) {
    try {
      PublicKey key =
          KeyFactory.getInstance(ALGORITHM)
              .generatePublic(new X509EncodedKeySpec(Base64.getDecoder().decode(shown)));
      Signature signature = Signature.getInstance(ALGORITHM);
      signature.initVerify(key);
      signature.update(text.getBytes(StandardCharsets.UTF_8));
      return signature.verify(HexFormat.of().parseHex(signed));
    } catch (GeneralSecurityException | IllegalArgumentException e) {
      return false;
    }
  }

  /** First 16 hexadecimal digits of the SHA-256 of a public key, for people to compare. */
  static String fingerprint(String shown) {
    byte[] hash = Hashes.sha256().digest(shown.getBytes(StandardCharsets.US_ASCII));
    return HexFormat.of().formatHex(hash, 0, FINGERPRINT_BYTES);
  }
}
