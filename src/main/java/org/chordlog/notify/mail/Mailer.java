package org.chordlog.notify.mail;

import jakarta.mail.MessagingException;
import jakarta.mail.Session;
import jakarta.mail.Transport;
import java.util.Properties;
import org.chordlog.measure.BadInput;
import org.chordlog.notify.channel.Letter;
import org.chordlog.notify.channel.MailServer;
import org.chordlog.notify.channel.MailServer.Encryption;
import org.chordlog.notify.channel.Outcome;
import org.chordlog.trust.IssuerFile;
import org.jspecify.annotations.Nullable;

/**
 * Gives mails to a server, one connection each. Every wait has an end. Any thread; the password is
 * read at each connection.
 */
public final class Mailer {
  private static final int PATIENCE_MILLIS = 10_000;
  private final MailServer server;
  private final String name;
  private final int patienceMillis;

  /** {@code name}: the sender's, as mail programs show it. */
  public Mailer(MailServer server, String name) {
    this(server, name, PATIENCE_MILLIS);
  }

  /** With another longest wait, for connecting, for each answer and for each write. */
  Mailer(MailServer server, String name, int patienceMillis) {
    this.server = server;
    this.name = name;
    this.patienceMillis = patienceMillis;
  }

  /** Sends it; the same envelope id may be sent again and is one mail to mail programs. */
  public Outcome send(Letter letter, Envelope envelope) {
    return with(
        (session, transport) -> {
          MailForm mail = MailForm.of(session, server.from(), name, letter, envelope);
          transport.sendMessage(mail, mail.getAllRecipients());
        });
  }

  /** Connects, encrypts and signs in, and sends nothing. */
  public Outcome check() {
    return with((session, transport) -> {});
  }

  private interface Task {
    void run(Session session, Transport transport) throws MessagingException;
  }

  private Outcome with(Task task) {
    try {
      Session session = Session.getInstance(properties());
      Transport transport = session.getTransport("smtp");
      try {
        connect(transport);
        task.run(session, transport);
      } finally {
        close(transport);
      }
      return new Outcome.Delivered();
    } catch (MessagingException e) {
      return new MailProblem(server, patienceMillis).outcome(e);
    } catch (BadInput e) {
      return new Outcome.Later("mail: " + e.getMessage());
    }
  }

  private void connect(Transport transport) throws MessagingException {
    MailServer.@Nullable Account account = server.account();
    transport.connect(
        server.host(),
        server.port(),
        account == null ? null : account.user(),
        account == null ? null : account.password().read());
  }

  /** What was accepted is accepted, however the connection ends. */
  private static void close(Transport transport) {
    try {
      transport.close();
    } catch (MessagingException e) {
      // the server has hung up already
    }
  }

  private Properties properties() {
    Properties all = new Properties();
    String patience = Integer.toString(patienceMillis);
    all.put("mail.smtp.connectiontimeout", patience);
    all.put("mail.smtp.timeout", patience);
    all.put("mail.smtp.writetimeout", patience);
    all.put("mail.smtp.auth", Boolean.toString(server.account() != null));
    boolean startTls = server.encryption() == Encryption.STARTTLS;
    all.put("mail.smtp.starttls.enable", Boolean.toString(startTls));
    all.put("mail.smtp.starttls.required", Boolean.toString(startTls));
    all.put("mail.smtp.ssl.enable", Boolean.toString(server.encryption() == Encryption.TLS));
    all.put("mail.smtp.ssl.checkserveridentity", "true");
    all.put("mail.smtp.ssl.protocols", "TLSv1.3 TLSv1.2");
    all.put("mail.smtp.from", server.from());
    if (server.caFile() != null) {
      all.put(
          "mail.smtp.ssl.socketFactory",
          IssuerFile.trusting("caFile", server.caFile()).getSocketFactory());
    }
    return all;
  }
}
