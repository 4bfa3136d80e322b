package org.chordlog.store.postgres;

import java.security.cert.CertPathBuilderException;
import java.security.cert.CertPathValidatorException;
import java.security.cert.CertificateExpiredException;
import java.security.cert.CertificateNotYetValidException;
import java.security.cert.CertificateParsingException;
import java.security.cert.X509Certificate;
import java.sql.SQLException;
import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.net.ssl.SSLException;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Fault;
import org.jspecify.annotations.Nullable;
import org.postgresql.util.PSQLException;

/**
 * Why there is no TLS with the database of a plant, in a sentence without a full stop that says
 * what to change; {@code setting}: what the file of trusted issuers is called where it is given.
 */
public record TlsProblem(String setting) {
  private static final String REJECTED = "08004";
  private static final int DATE = 10;

  /** Empty where something else is wrong. */
  public Optional<String> of(SQLException e) {
    return first(e, ServerTrust.NotTrusted.class)
        .map(refused -> words(refused))
        .or(() -> first(e, BadInput.class).flatMap(this::unreadable))
        .or(() -> noneOffered(e))
        .or(() -> first(e, SSLException.class).map(TlsProblem::otherwise));
  }

  private static String otherwise(SSLException e) {
    return "TLS with the plant's database failed: " + e.getMessage();
  }

  private static <T> Optional<T> first(Throwable e, Class<T> type) {
    return Stream.iterate(e, each -> each != null, Throwable::getCause)
        .limit(20)
        .filter(type::isInstance)
        .map(type::cast)
        .findFirst();
  }

  private String words(ServerTrust.NotTrusted e) {
    String of = "the certificate of the plant's database at " + e.host();
    X509Certificate shown = e.certificate();
    if (first(e, CertificateExpiredException.class).isPresent()) {
      return "%s ended on %s: the server needs a new one; one of the same issuer needs no change of %s"
          .formatted(of, day(shown.getNotAfter().toInstant()), setting);
    }
    if (first(e, CertificateNotYetValidException.class).isPresent()) {
      return "%s begins on %s: the clock of this computer or of the issuer is wrong (%s is right)"
          .formatted(of, day(shown.getNotBefore().toInstant()), setting);
    }
    if (first(e, CertPathBuilderException.class).isPresent()) {
      return of + " was issued by " + issuer(shown) + notTrusted(e.issuers());
    }
    return first(e, CertPathValidatorException.class).isPresent()
        ? of + " is not accepted by " + setting + ": " + e.getMessage()
        : of
            + " is for "
            + names(shown)
            + ": the URL of the database must name the server as its"
            + " certificate does ("
            + setting
            + " vouches for the issuer alone)";
  }

  private static String day(Instant at) {
    return at.toString().substring(0, DATE);
  }

  private static String issuer(X509Certificate shown) {
    return shown.getIssuerX500Principal().getName();
  }

  private String notTrusted(@Nullable Object issuers) {
    return issuers == null
        ? ", whom Java does not trust: " + setting + " takes a file with that issuer's certificate"
        : ", who is not among those in " + setting + " (" + issuers + ")";
  }

  private static String names(X509Certificate shown) {
    try {
      @Nullable Collection<List<?>> names = shown.getSubjectAlternativeNames();
      return names == null
          ? shown.getSubjectX500Principal().getName()
          : names.stream()
              .map(each -> String.valueOf(each.get(1)))
              .collect(Collectors.joining(", "));
    } catch (CertificateParsingException e) {
      return "nobody that can be read";
    }
  }

  private Optional<String> unreadable(BadInput e) {
    Fault fault = e.faults().get(0);
    return fault.field().equals(PlantTls.ISSUERS)
        ? Optional.of(String.valueOf(fault.at(setting)))
        : Optional.empty();
  }

  /** Said by the driver, not by the server. */
  private Optional<String> noneOffered(SQLException e) {
    return first(e, PSQLException.class)
        .filter(each -> each.getServerErrorMessage() == null)
        .filter(each -> REJECTED.equals(each.getSQLState()))
        .filter(each -> String.valueOf(each.getMessage()).contains("SSL"))
        .map(
            each ->
                "the plant's database offers no TLS, without which nothing is sent beyond this"
                    + " computer, nor where "
                    + setting
                    + " is given: set ssl = on at the server");
  }
}
