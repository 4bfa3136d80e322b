package org.chordlog.notify.send;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.chordlog.notify.channel.Letter;
import org.chordlog.notify.channel.MailServer;
import org.chordlog.notify.channel.Outcome;
import org.chordlog.notify.channel.Webhook;
import org.chordlog.notify.mail.Envelope;
import org.chordlog.notify.mail.Mailer;
import org.chordlog.notify.people.Person;
import org.chordlog.notify.settings.AlertSettings;
import org.chordlog.notify.webhook.WebhookSender;
import org.jspecify.annotations.Nullable;

/** Tries each channel once, outside the running service and its outbox. */
public record ChannelCheck(AlertSettings settings) {
  /** One channel: what it is, where it goes to, and what was seen in a sentence. */
  public record Checked(String channel, String to, boolean well, String said) {
    private static Checked of(String channel, String to, Outcome outcome, String well) {
      if (outcome instanceof Outcome.Later later) {
        return new Checked(channel, to, false, later.problem());
      }
      return outcome instanceof Outcome.Never never
          ? new Checked(channel, to, false, never.problem())
          : new Checked(channel, to, true, well);
    }
  }

  /** Connects to each and sends nothing. */
  public List<Checked> connect() {
    List<Checked> all = new ArrayList<>();
    @Nullable MailServer mail = settings.mail();
    if (mail != null) {
      String signedIn = mail.account() == null ? "" : ", and takes user and password";
      all.add(
          Checked.of("mail", mail.place(), mailer(mail).check(), "answers" + by(mail) + signedIn));
    }
    for (Webhook each : settings.webhooks()) {
      Outcome outcome = new WebhookSender(each).check();
      all.add(Checked.of("webhook", each.name(), outcome, "can be reached"));
    }
    return all;
  }

  private static String by(MailServer mail) {
    return switch (mail.encryption()) {
      case STARTTLS -> " by STARTTLS with a good certificate";
      case TLS -> " by TLS with a good certificate";
      case NONE -> ", not encrypted";
    };
  }

  /** Sends a mail to each person and a call of type {@code alert.test} to each webhook. */
  public List<Checked> send(Instant now) {
    List<Checked> all = new ArrayList<>();
    @Nullable MailServer mail = settings.mail();
    if (mail != null) {
      for (Person each : settings.roster().everybody()) {
        Envelope envelope =
            new Envelope(each.mail(), "test-" + now.toEpochMilli() + "-" + all.size(), "", now);
        Outcome outcome = mailer(mail).send(letter(), envelope);
        all.add(Checked.of("mail", each.mail(), outcome, "the server took a test message"));
      }
    }
    for (Webhook each : settings.webhooks()) {
      Outcome outcome =
          new WebhookSender(each)
              .send(
                  "msg_test_" + now.toEpochMilli(),
                  new WebhookBody(settings.site()).test(now),
                  now);
      all.add(Checked.of("webhook", each.name(), outcome, "took a test message"));
    }
    return all;
  }

  private Mailer mailer(MailServer mail) {
    return new Mailer(mail, ByMail.sender(settings));
  }

  private Letter letter() {
    String text = "Somebody tries whether messages about alerts reach you. There is nothing to do.";
    return new Letter(
        "[" + settings.site().name() + "] Test of alerts",
        List.of(new Letter.Part("", text)),
        settings.site().link("alerts.html"));
  }
}
