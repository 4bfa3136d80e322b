package org.chordlog.notify.mail;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import jakarta.mail.BodyPart;
import jakarta.mail.Session;
import jakarta.mail.internet.MimeMessage;
import jakarta.mail.internet.MimeMultipart;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Instant;
import java.util.List;
import java.util.Properties;
import org.chordlog.harness.Openssl;
import org.chordlog.measure.BadInput;
import org.chordlog.notify.channel.Letter;
import org.chordlog.notify.channel.MailServer;
import org.chordlog.notify.channel.MailServer.Account;
import org.chordlog.notify.channel.MailServer.Encryption;
import org.chordlog.notify.channel.Outcome;
import org.chordlog.trust.SecretFile;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Mails against a real server that behaves well, badly, and not at all. */
@Tag("slow")
final class MailerTest {
  private static final int PATIENCE_MILLIS = 2_000;
  private static final Letter LETTER =
      new Letter(
          "[Invented shop] Machine <PB-3> & \u201crollers\u201d",
          List.of(
              new Letter.Part("What", "Radius 1\u202f800 mm < 2 m\nand a second line"),
              new Letter.Part("", "No heading & <b>no</b> markup")),
          "https://chordlog.example/alerts.html?a=1&b=2");
  private static final Envelope ENVELOPE =
      new Envelope(
          "fitter@shop.example",
          "alert-7-raised-1",
          "alert-7",
          Instant.parse("2026-11-26T10:00:00Z"));

  @TempDir Path folder;

  private Mailer mailer(MailProcess at, String host, Path issuer, @Nullable Account account) {
    MailServer server =
        new MailServer(
            host, at.port(), Encryption.STARTTLS, "chordlog@shop.example", account, issuer);
    return new Mailer(server, "Chordlog, invented shop", PATIENCE_MILLIS);
  }

  private Outcome send(MailProcess at) {
    return mailer(at, "127.0.0.1", at.issuer(), null).send(LETTER, ENVELOPE);
  }

  private static String problem(Outcome outcome) {
    return outcome instanceof Outcome.Later later
        ? later.problem()
        : assertInstanceOf(Outcome.Never.class, outcome).problem();
  }

  @Test
  void aMailArrivesAsPlainTextWithTheSameInHtml() throws Exception {
    try (MailProcess server = MailProcess.good(folder)) {
      assertEquals(new Outcome.Delivered(), send(server));
      String sent = server.mails().get(0);
      MimeMessage mail =
          new MimeMessage(
              Session.getInstance(new Properties()),
              new ByteArrayInputStream(sent.getBytes(StandardCharsets.UTF_8)));
      assertEquals(LETTER.subject(), mail.getSubject());
      assertEquals("<alert-7-raised-1@shop.example>", mail.getMessageID());
      assertEquals("<alert-7@shop.example>", mail.getHeader("In-Reply-To", null));
      assertEquals("<alert-7@shop.example>", mail.getHeader("References", null));
      assertEquals("auto-generated", mail.getHeader("Auto-Submitted", null));
      assertTrue(mail.getHeader("List-Id", null).contains("<alerts.chordlog.shop.example>"));
      assertEquals(ENVELOPE.made(), mail.getSentDate().toInstant());
      MimeMultipart both = assertInstanceOf(MimeMultipart.class, mail.getContent());
      assertTrue(both.getContentType().startsWith("multipart/alternative"));
      assertPlain(both.getBodyPart(0));
      assertHtml(both.getBodyPart(1));
    }
  }

  private static void assertPlain(BodyPart part) throws Exception {
    assertTrue(part.getContentType().startsWith("text/plain"), part.getContentType());
    assertEquals(
        """
        What:
        Radius 1\u202f800 mm < 2 m
        and a second line

        No heading & <b>no</b> markup

        https://chordlog.example/alerts.html?a=1&b=2
        """,
        part.getContent().toString().replace("\r\n", "\n"));
  }

  private static void assertHtml(BodyPart part) throws Exception {
    assertTrue(part.getContentType().startsWith("text/html"), part.getContentType());
    String html = part.getContent().toString();
    assertTrue(html.contains("&lt; 2 m<br>"), html);
    assertTrue(html.contains("No heading &amp; &lt;b&gt;no&lt;/b&gt; markup"), html);
    assertTrue(
        html.contains("<a href=\"https://chordlog.example/alerts.html?a=1&amp;b=2\">"), html);
    assertFalse(html.contains("<img") || html.contains("<script"), html);
  }

  @Test
  void theSameMailSentTwiceHasOneId() throws Exception {
    try (MailProcess server = MailProcess.good(folder)) {
      assertEquals(new Outcome.Delivered(), send(server));
      assertEquals(new Outcome.Delivered(), send(server));
      List<String> ids =
          server.mails().stream().map(each -> MailProcess.header(each, "Message-ID")).toList();
      assertEquals(List.of("<alert-7-raised-1@shop.example>", ids.get(0)), ids);
    }
  }

  @Test
  void aLineBreakInASubjectIsRefused() {
    BadInput e =
        assertThrows(
            BadInput.class, () -> new Letter("a\r\nBcc: x@y.example", List.of(), "https://a/"));
    assertTrue(e.toString().contains("subject has a control character"), e::toString);
    assertEquals("a  Bcc", Letter.plain("a\r\nBcc"));
  }

  @Test
  void aCertificateOfAnotherIssuerIsRefusedAndNothingIsSent() throws Exception {
    Path other = new Openssl(folder).issuer("other");
    try (MailProcess server = MailProcess.good(folder)) {
      Outcome outcome = mailer(server, "127.0.0.1", other, null).send(LETTER, ENVELOPE);
      assertInstanceOf(Outcome.Later.class, outcome);
      assertTrue(problem(outcome).contains("certificate that is not trusted"), problem(outcome));
      assertEquals(List.of(), server.mails());
    }
  }

  /** The certificate is for localhost and 127.0.0.1. */
  @Test
  void aCertificateOfAnotherHostIsRefusedAndNothingIsSent() throws Exception {
    try (MailProcess server = MailProcess.at("127.0.0.2", "good", folder)) {
      Outcome outcome = mailer(server, "127.0.0.2", server.issuer(), null).send(LETTER, ENVELOPE);
      assertTrue(problem(outcome).contains("certificate that is not trusted"), problem(outcome));
      assertEquals(List.of(), server.mails());
    }
  }

  @Test
  void aServerWithoutStartTlsGetsNothing() throws Exception {
    try (MailProcess server = MailProcess.that("plain", folder)) {
      Outcome outcome = send(server);
      assertTrue(problem(outcome).contains("offers no STARTTLS"), problem(outcome));
      assertEquals(List.of(), server.mails());
    }
  }

  @Test
  void aServerThatIsSilentIsNotWaitedForForEver() throws Exception {
    for (String behaves : List.of("silent", "silent-after-data")) {
      try (MailProcess server = MailProcess.that(behaves, folder)) {
        Outcome outcome = send(server);
        assertInstanceOf(Outcome.Later.class, outcome);
        assertTrue(problem(outcome).contains("did not answer within 2 s"), problem(outcome));
      }
    }
  }

  @Test
  void aPassingRefusalIsTriedAgainAndAFinalOneIsNot() throws Exception {
    try (MailProcess busy = MailProcess.that("451", folder);
        MailProcess unknown = MailProcess.that("550", folder)) {
      Outcome later = assertInstanceOf(Outcome.Later.class, send(busy));
      assertTrue(problem(later).contains("refused the mail: 451 4.3.0 try again"), problem(later));
      Outcome never = assertInstanceOf(Outcome.Never.class, send(unknown));
      assertTrue(
          problem(never).contains("refused the address fitter@shop.example: 550 5.1.1"),
          problem(never));
    }
  }

  @Test
  void aServerThatHangsUpInTheMiddleOfAMailIsTriedAgain() throws Exception {
    try (MailProcess server = MailProcess.that("closing", folder)) {
      Outcome later = assertInstanceOf(Outcome.Later.class, send(server));
      assertTrue(problem(later).contains("broke off"), problem(later));
      assertEquals(List.of(), server.mails());
    }
  }

  @Test
  void nobodyAtThePortIsSaid() throws Exception {
    MailProcess server = MailProcess.good(folder);
    server.close();
    Outcome outcome = send(server);
    assertTrue(problem(outcome).endsWith("takes no connection"), problem(outcome));
  }

  @Test
  void userAndPasswordAreGivenAfterStartTlsAndCheckedWithoutSending() throws Exception {
    try (MailProcess server = MailProcess.that("auth", folder)) {
      Account good = new Account("chordlog", password("a long secret"));
      Mailer mailer = mailer(server, "localhost", server.issuer(), good);
      assertEquals(new Outcome.Delivered(), mailer.check());
      assertEquals(List.of(), server.mails());
      assertEquals(new Outcome.Delivered(), mailer.send(LETTER, ENVELOPE));
      Account bad = new Account("chordlog", password("a wrong one"));
      Outcome refused = mailer(server, "localhost", server.issuer(), bad).check();
      assertTrue(problem(refused).contains("does not accept user and password"), problem(refused));
      assertFalse(problem(refused).contains("a wrong one"));
    }
  }

  private SecretFile password(String secret) throws Exception {
    Path file = Files.createTempFile(folder, "password", "");
    Files.writeString(file, secret + "\n");
    Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rw-r-----"));
    return new SecretFile("passwordFile", file);
  }
}
