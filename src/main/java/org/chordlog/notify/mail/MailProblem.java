package org.chordlog.notify.mail;

import jakarta.mail.AuthenticationFailedException;
import jakarta.mail.MessagingException;
import java.net.ConnectException;
import java.net.SocketTimeoutException;
import java.net.UnknownHostException;
import java.security.cert.CertificateException;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import javax.net.ssl.SSLException;
import org.chordlog.notify.channel.MailServer;
import org.chordlog.notify.channel.Outcome;
import org.eclipse.angus.mail.smtp.SMTPAddressFailedException;
import org.eclipse.angus.mail.smtp.SMTPSendFailedException;
import org.eclipse.angus.mail.smtp.SMTPSenderFailedException;
import org.jspecify.annotations.Nullable;

/**
 * What kept a mail from being sent, in words, and whether trying again can help (RFC 5321, 4.2).
 */
record MailProblem(MailServer server, int patienceMillis) {
  private static final int NEVER = 500;

  Outcome outcome(MessagingException e) {
    Optional<Refused> refused = causes(e).flatMap(each -> refused(each).stream()).findFirst();
    if (refused.isPresent()) {
      Refused by = refused.get();
      String said = server.place() + " refused " + by.what() + ": " + by.words();
      return by.code() >= NEVER ? new Outcome.Never(said) : new Outcome.Later(said);
    }
    return new Outcome.Later(words(e));
  }

  /** What the server said no to, and how. */
  private record Refused(String what, int code, String words) {}

  private static Optional<Refused> refused(Throwable cause) {
    if (cause instanceof SMTPAddressFailedException e) {
      return refused("the address " + e.getAddress(), e.getReturnCode(), e.getMessage());
    }
    if (cause instanceof SMTPSenderFailedException e) {
      return refused("the sender", e.getReturnCode(), e.getMessage());
    }
    return cause instanceof SMTPSendFailedException e && e.getNextException() == null
        ? refused("the mail", e.getReturnCode(), e.getMessage())
        : Optional.empty();
  }

  /** A code below 400 is none: the connection broke. */
  private static Optional<Refused> refused(String what, int code, @Nullable String words) {
    return code < 400
        ? Optional.empty()
        : Optional.of(new Refused(what, code, String.valueOf(words).strip()));
  }

  private String words(MessagingException e) {
    String at = server.place();
    if (e instanceof AuthenticationFailedException) {
      return at + " does not accept user and password: " + e.getMessage();
    }
    if (has(e, SocketTimeoutException.class)) {
      return at + " did not answer within " + patienceMillis / 1_000 + " s";
    }
    if (has(e, UnknownHostException.class)) {
      return at + " is not known by that name";
    }
    if (has(e, CertificateException.class) || has(e, SSLException.class)) {
      return at + " shows a certificate that is not trusted: " + deepest(e);
    }
    if (has(e, ConnectException.class)) {
      return at + " takes no connection";
    }
    String said = String.valueOf(e.getMessage());
    return said.toUpperCase(Locale.ROOT).contains("STARTTLS")
        ? at + " offers no STARTTLS; nothing was sent"
        : at + " broke off: " + said.strip();
  }

  private static boolean has(MessagingException e, Class<? extends Throwable> type) {
    return causes(e).anyMatch(type::isInstance);
  }

  private static String deepest(MessagingException e) {
    String last = "";
    for (Throwable each : causes(e).toList()) {
      last = String.valueOf(each.getMessage());
    }
    return last;
  }

  /** The library chains causes of its own kind in another way than others. */
  private static Stream<Throwable> causes(Throwable first) {
    return Stream.iterate(first, each -> each != null, MailProblem::next).limit(20);
  }

  private static @Nullable Throwable next(Throwable of) {
    Throwable nested = of instanceof MessagingException e ? e.getNextException() : null;
    return nested == null ? of.getCause() : nested;
  }
}
