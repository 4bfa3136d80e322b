package org.chordlog.web.tls;

import java.io.ByteArrayInputStream;
import java.nio.file.Path;
import java.security.cert.CertificateException;
import java.security.cert.CertificateFactory;
import java.security.cert.X509Certificate;
import java.util.ArrayList;
import java.util.List;
import org.chordlog.measure.BadInput;
import org.chordlog.web.http.TlsFiles;

/** A PEM file with the service's certificate first, then those of its issuers in order. */
final class CertificateFile {
  private static final String LABEL = "CERTIFICATE";

  private CertificateFile() {}

  static List<X509Certificate> read(Path file) {
    PemText pem = PemText.read(TlsFiles.CERTIFICATE, file);
    if (!pem.has(LABEL)) {
      throw other(file, pem);
    }
    List<X509Certificate> chain = certificates(file, pem);
    for (int i = 1; i < chain.size(); i++) {
      if (!chain
          .get(i - 1)
          .getIssuerX500Principal()
          .equals(chain.get(i).getSubjectX500Principal())) {
        throw bad(
            file,
            "has its certificates in another order",
            "the service's own first, then its issuers: cat service.pem issuer.pem > " + file);
      }
    }
    return chain;
  }

  private static BadInput other(Path file, PemText pem) {
    return pem.text().contains("PRIVATE KEY-----")
        ? bad(file, "holds a private key", "the certificate; the key belongs to " + TlsFiles.KEY)
        : bad(
            file,
            "holds no PEM certificate",
            "PEM, which openssl x509 -in "
                + file
                + " -out chain.pem makes of one in DER, and"
                + " openssl pkcs12 -nokeys -in "
                + file
                + " -out chain.pem of a PKCS#12 file");
  }

  private static List<X509Certificate> certificates(Path file, PemText pem) {
    try {
      CertificateFactory factory = CertificateFactory.getInstance("X.509");
      List<X509Certificate> chain = new ArrayList<>();
      for (byte[] block : pem.blocks(LABEL)) {
        chain.add((X509Certificate) factory.generateCertificate(new ByteArrayInputStream(block)));
      }
      if (!chain.isEmpty()) {
        return chain;
      }
    } catch (CertificateException | IllegalArgumentException e) {
      // said below
    }
    throw bad(
        file, "is damaged", "a file that openssl x509 -noout -text -in " + file + " can show");
  }

  private static BadInput bad(Path file, String problem, String allowed) {
    return new BadInput(TlsFiles.CERTIFICATE, file, problem, allowed);
  }
}
