package org.chordlog.web.tls;

import java.security.GeneralSecurityException;
import java.security.KeyStore;
import java.security.PrivateKey;
import java.security.PublicKey;
import java.security.SecureRandom;
import java.security.Signature;
import java.security.cert.CertificateParsingException;
import java.security.cert.X509Certificate;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.chordlog.measure.BadInput;
import org.chordlog.web.http.TlsFiles;

/** A certificate with those of its issuers, and the key that belongs to it. */
record TlsIdentity(List<X509Certificate> chain, PrivateKey key) {
  private static final int DNS_NAME = 2;

  TlsIdentity {
    chain = List.copyOf(chain);
  }

  /** Reads both files; refused by the setting's name, with the command that mends it. */
  static TlsIdentity read(TlsFiles files) {
    List<X509Certificate> chain = CertificateFile.read(files.certificate());
    PublicKey wanted = chain.get(0).getPublicKey();
    PrivateKey key = KeyFile.read(files.key(), wanted.getAlgorithm());
    if (!belongs(key, wanted)) {
      throw new BadInput(
          TlsFiles.KEY,
          files.key(),
          "does not belong to the certificate in " + files.certificate(),
          "the key whose public part, openssl pkey -pubout -in "
              + files.key()
              + ", is that of the certificate, openssl x509 -noout -pubkey -in "
              + files.certificate());
    }
    return new TlsIdentity(chain, key);
  }

  private static boolean belongs(PrivateKey key, PublicKey wanted) {
    try {
      byte[] text = new byte[32];
      new SecureRandom().nextBytes(text);
      Signature made = Signature.getInstance(signature(key.getAlgorithm()));
      made.initSign(key);
      made.update(text);
      Signature checked = Signature.getInstance(made.getAlgorithm());
      checked.initVerify(wanted);
      checked.update(text);
      return checked.verify(made.sign());
    } catch (GeneralSecurityException e) {
      return false;
    }
  }

  private static String signature(String algorithm) {
    return switch (algorithm) {
      case "RSA" -> "SHA256withRSA";
      case "EC" -> "SHA256withECDSA";
      default -> algorithm;
    };
  }

  X509Certificate leaf() {
    return chain.get(0);
  }

  Instant notAfter() {
    return leaf().getNotAfter().toInstant();
  }

  /** Names of hosts that the certificate is made out to, in small letters. */
  Set<String> names() {
    try {
      var all = leaf().getSubjectAlternativeNames();
      return (all == null ? Stream.<List<?>>empty() : all.stream())
          .filter(each -> each.get(0).equals(DNS_NAME))
          .map(each -> String.valueOf(each.get(1)).toLowerCase(Locale.ROOT))
          .collect(Collectors.toSet());
    } catch (CertificateParsingException e) {
      return Set.of();
    }
  }

  /** In memory, without a password that would protect it from nobody. */
  KeyStore keyStore() {
    try {
      KeyStore store = KeyStore.getInstance("PKCS12");
      store.load(null, null);
      store.setKeyEntry("service", key, new char[0], chain.toArray(X509Certificate[]::new));
      return store;
    } catch (GeneralSecurityException | java.io.IOException e) {
      throw new IllegalStateException("the key can't be held in memory", e);
    }
  }
}
