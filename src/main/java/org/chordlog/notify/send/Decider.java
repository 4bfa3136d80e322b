package org.chordlog.notify.send;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.chordlog.measure.alert.Alert;
import org.chordlog.measure.alert.AlertEvent;
import org.chordlog.measure.alert.AlertState;
import org.chordlog.notify.people.Escalation.Step;
import org.chordlog.notify.people.Person;
import org.chordlog.notify.people.Roster;
import org.chordlog.notify.settings.AlertSettings;
import org.chordlog.store.Alerts;
import org.chordlog.store.Outbox;
import org.chordlog.store.Outbox.Message;
import org.chordlog.store.Outbox.Recipient;
import org.chordlog.store.Outbox.Topic;

/**
 * Decides who is told of what. What an alert asks for comes from its state, so that whoever comes
 * on shift later is told too; what went away, and what programs are told, comes from events, each
 * once, by a cursor. Messages are stored once however often this runs. One thread.
 */
final class Decider {
  static final String CURSOR = "messages";
  private static final int PAGE = 500;

  private final AlertSettings settings;
  private final Roster roster;
  private final Alerts alerts;
  private final Outbox outbox;

  Decider(AlertSettings settings, Alerts alerts, Outbox outbox) {
    this.settings = settings;
    this.roster = settings.roster();
    this.alerts = alerts;
    this.outbox = outbox;
  }

  /** Where nothing was ever sent, what happened before now is not told event by event. */
  void begin() {
    if (alerts.cursor(CURSOR) == 0) {
      alerts.moveCursor(CURSOR, alerts.lastEventId());
    }
  }

  void decide(Instant now) {
    List<Message> messages = new ArrayList<>();
    if (settings.mail() != null) {
      alerts.open().stream()
          .filter(each -> each.state().waits())
          .forEach(each -> messages.addAll(appeals(each, now)));
      messages.addAll(daily(now));
    }
    if (!messages.isEmpty()) {
      int unused = outbox.add(messages);
    }
    readEvents();
  }

  /** To whom it is to be told now that was not told of this appeal. */
  private List<Message> appeals(Alert alert, Instant now) {
    return Appeal.newest(alerts.events(alert.id()))
        .map(appeal -> appeals(alert, appeal, now))
        .orElse(List.of());
  }

  private List<Message> appeals(Alert alert, Appeal appeal, Instant now) {
    Set<Recipient> told =
        outbox.about(Topic.RAISED, appeal.eventId()).stream()
            .map(Message::to)
            .collect(Collectors.toSet());
    return roster.now(alert.treatedAs(), step(alert, appeal, now), now).stream()
        .map(person -> Recipient.mail(person.mail()))
        .filter(to -> !told.contains(to))
        .map(to -> message(to, Topic.RAISED, appeal.eventId(), alert.id(), now))
        .toList();
  }

  /**
   * One that went away by itself goes no further; a mail that can't be delivered goes on at once.
   */
  private Step step(Alert alert, Appeal appeal, Instant now) {
    if (alert.state() != AlertState.UNACKNOWLEDGED) {
      return Step.FIRST;
    }
    Step byTime = roster.escalation().step(alert.treatedAs().priority(), appeal.since(), now);
    return byTime == Step.FIRST && outbox.failed(Topic.RAISED, appeal.eventId())
        ? Step.SECOND
        : byTime;
  }

  private List<Message> daily(Instant now) {
    ZonedDateTime local = now.atZone(roster.zone());
    LocalDate today = local.toLocalDate();
    List<Message> made = new ArrayList<>();
    if (!local.toLocalTime().isBefore(settings.daily().at())
        && outbox.about(Topic.DAILY, today.toEpochDay()).isEmpty()) {
      for (Person each : settings.daily().people()) {
        Recipient to = Recipient.mail(each.mail());
        made.add(message(to, Topic.DAILY, today.toEpochDay(), 0, now));
      }
    }
    return made;
  }

  private void readEvents() {
    List<AlertEvent> events = alerts.eventsAfter(alerts.cursor(CURSOR), PAGE);
    while (!events.isEmpty()) {
      List<Message> messages = new ArrayList<>();
      events.forEach(each -> messages.addAll(of(each)));
      int unused = outbox.add(messages);
      alerts.moveCursor(CURSOR, events.get(events.size() - 1).id());
      events = alerts.eventsAfter(alerts.cursor(CURSOR), PAGE);
    }
  }

  private List<Message> of(AlertEvent event) {
    Instant at = Micros.instant(event.atMicros());
    long alert = event.alert().id();
    List<Message> made = new ArrayList<>();
    settings
        .webhooks()
        .forEach(
            each ->
                made.add(
                    message(Recipient.webhook(each.name()), Topic.EVENT, event.id(), alert, at)));
    if (event.what() == AlertEvent.What.RETURNED) {
      made.addAll(returned(event, at));
    }
    return made;
  }

  /** To those who were told that it asks for somebody. */
  private List<Message> returned(AlertEvent event, Instant at) {
    List<AlertEvent> before =
        alerts.events(event.alert().id()).stream().filter(e -> e.id() <= event.id()).toList();
    return Appeal.newest(before).stream()
        .flatMap(appeal -> outbox.about(Topic.RAISED, appeal.eventId()).stream())
        .map(told -> message(told.to(), Topic.RETURNED, told.number(), told.alertId(), at))
        .toList();
  }

  private static Message message(Recipient to, Topic topic, long number, long alertId, Instant at) {
    return new Message(0, to, topic, number, alertId, Micros.of(at));
  }
}
