package org.chordlog.notify.send;

import java.time.Clock;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.chordlog.measure.alert.AlertEvent;
import org.chordlog.notify.channel.Outcome;
import org.chordlog.notify.channel.Webhook;
import org.chordlog.notify.settings.AlertSettings;
import org.chordlog.notify.webhook.WebhookSender;
import org.chordlog.store.Alerts;
import org.chordlog.store.Outbox.Delivery;
import org.chordlog.store.Outbox.Message;
import org.chordlog.store.Store;
import org.jspecify.annotations.Nullable;

/** Sends deliveries as calls, each attempt under the same id. */
final class ByWebhook implements Courier.Way {
  private final Map<String, WebhookSender> senders;
  private final WebhookBody body;
  private final Store store;
  private final Clock clock;

  ByWebhook(AlertSettings settings, Store store, Clock clock) {
    senders =
        settings.webhooks().stream().collect(Collectors.toMap(Webhook::name, WebhookSender::new));
    body = new WebhookBody(settings.site());
    this.store = store;
    this.clock = clock;
  }

  @Override
  public Outcome send(Delivery delivery, List<Message> messages) {
    @Nullable WebhookSender sender = senders.get(delivery.to().name());
    if (sender == null) {
      return new Outcome.Never(delivery.to().name() + " is no longer in the file of alerts");
    }
    Optional<AlertEvent> event = event(store.alerts(), messages.get(0));
    String id = "msg_" + store.epoch() + "_" + delivery.id();
    return event.isEmpty()
        ? new Outcome.Never("its event is no longer stored")
        : sender.send(id, body.of(event.get()), clock.instant());
  }

  private static Optional<AlertEvent> event(Alerts alerts, Message message) {
    return alerts.eventsAfter(message.number() - 1, 1).stream()
        .filter(each -> each.id() == message.number())
        .findFirst();
  }
}
