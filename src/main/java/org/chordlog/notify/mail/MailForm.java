package org.chordlog.notify.mail;

import jakarta.mail.Message.RecipientType;
import jakarta.mail.MessagingException;
import jakarta.mail.Session;
import jakarta.mail.internet.InternetAddress;
import jakarta.mail.internet.MimeBodyPart;
import jakarta.mail.internet.MimeMessage;
import jakarta.mail.internet.MimeMultipart;
import java.io.UnsupportedEncodingException;
import java.util.Date;
import org.chordlog.notify.channel.Letter;

/** A letter as a mail: plain text first, the same as HTML after it. */
final class MailForm extends MimeMessage {
  private static final String UTF_8 = "UTF-8";
  private final String id;

  private MailForm(Session session, String id) {
    super(session);
    this.id = id;
  }

  /** {@code from}: address of the sender, whose host the ids end with; {@code name}: his name. */
  static MailForm of(Session session, String from, String name, Letter letter, Envelope envelope)
      throws MessagingException {
    String host = from.substring(from.indexOf('@'));
    MailForm mail = new MailForm(session, "<" + envelope.id() + host + ">");
    try {
      mail.setFrom(new InternetAddress(from, name, UTF_8));
    } catch (UnsupportedEncodingException e) {
      throw new IllegalStateException("every Java has UTF-8", e);
    }
    mail.setRecipient(RecipientType.TO, new InternetAddress(envelope.to(), true));
    mail.setSubject(letter.subject(), UTF_8);
    mail.setSentDate(Date.from(envelope.made()));
    mail.setHeader("Auto-Submitted", "auto-generated"); // RFC 3834, 5
    mail.setHeader("List-Id", "Alerts of Chordlog <alerts.chordlog." + host.substring(1) + ">");
    if (!envelope.thread().isEmpty()) {
      String root = "<" + envelope.thread() + host + ">";
      mail.setHeader("In-Reply-To", root);
      mail.setHeader("References", root);
    }
    mail.setContent(both(letter));
    mail.saveChanges();
    return mail;
  }

  private static MimeMultipart both(Letter letter) throws MessagingException {
    MimeBodyPart text = new MimeBodyPart();
    text.setText(LetterText.plain(letter), UTF_8);
    MimeBodyPart html = new MimeBodyPart();
    html.setText(LetterText.html(letter), UTF_8, "html");
    return new MimeMultipart("alternative", text, html);
  }

  /** The library would make a new one each time. */
  @Override
  protected void updateMessageID() throws MessagingException {
    setHeader("Message-ID", id);
  }
}
