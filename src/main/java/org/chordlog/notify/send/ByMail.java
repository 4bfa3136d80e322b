package org.chordlog.notify.send;

import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.util.List;
import java.util.UUID;
import org.chordlog.notify.channel.MailServer;
import org.chordlog.notify.channel.Outcome;
import org.chordlog.notify.mail.Envelope;
import org.chordlog.notify.mail.Mailer;
import org.chordlog.notify.settings.AlertSettings;
import org.chordlog.store.Outbox.Delivery;
import org.chordlog.store.Outbox.Message;
import org.chordlog.store.Store;

/** Sends deliveries as mails, each attempt under the same id. */
final class ByMail implements Courier.Way {
  private final Mailer mailer;
  private final LetterWriter writer;
  private final Store store;
  private final Clock clock;

  ByMail(AlertSettings settings, MailServer server, Store store, Clock clock) {
    this.mailer = new Mailer(server, sender(settings));
    this.writer = new LetterWriter(settings, store);
    this.store = store;
    this.clock = clock;
  }

  /** Its name, as mail programs show it. */
  static String sender(AlertSettings settings) {
    return "Chordlog, " + settings.site().name();
  }

  @Override
  public Outcome send(Delivery delivery, List<Message> messages) {
    return mailer.send(writer.letter(messages, clock.instant()), envelope(delivery, messages));
  }

  private Envelope envelope(Delivery delivery, List<Message> messages) {
    String database = short8(store.identity() + store.epoch());
    long alert = messages.get(0).alertId();
    boolean single = alert > 0 && messages.stream().allMatch(each -> each.alertId() == alert);
    Message last = messages.get(messages.size() - 1);
    String about =
        single
            ? "alert-" + alert + "-" + last.topic() + "-" + last.number()
            : "all-" + delivery.id();
    return new Envelope(
        delivery.to().name(),
        about + "." + short8(delivery.to().name()) + "." + database,
        single ? "alert-" + alert + "." + database : "",
        Micros.instant(delivery.madeMicros()));
  }

  /** Tells texts from each other in an id of which others may read every part. */
  private static String short8(String text) {
    return UUID.nameUUIDFromBytes(text.getBytes(StandardCharsets.UTF_8)).toString().substring(0, 8);
  }
}
