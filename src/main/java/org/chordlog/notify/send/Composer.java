package org.chordlog.notify.send;

import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.chordlog.notify.people.MailBudget;
import org.chordlog.notify.people.Person;
import org.chordlog.notify.people.Roster;
import org.chordlog.store.Outbox;
import org.chordlog.store.Outbox.Channel;
import org.chordlog.store.Outbox.Delivery;
import org.chordlog.store.Outbox.Message;
import org.chordlog.store.Outbox.Progress;
import org.chordlog.store.Outbox.Recipient;
import org.chordlog.store.Outbox.State;
import org.chordlog.store.Outbox.Topic;

/**
 * Makes deliveries of messages: a mail for each alert while the recipient's budget of mails lasts,
 * else one with all that waits; a call for each message to a program. One thread.
 */
final class Composer {
  private static final int MOST = 20_000;
  private final Roster roster;
  private final Outbox outbox;

  Composer(Roster roster, Outbox outbox) {
    this.roster = roster;
    this.outbox = outbox;
  }

  void compose(Instant now) {
    outbox.waiting(Channel.MAIL).forEach(to -> mails(to, now));
    for (Recipient to : outbox.waiting(Channel.WEBHOOK)) {
      for (Message each : outbox.unsent(to, MOST)) {
        Delivery unused = outbox.deliver(to, List.of(each), Micros.of(now));
      }
    }
  }

  private void mails(Recipient to, Instant now) {
    Optional<Person> person =
        roster.everybody().stream().filter(each -> each.mail().equals(to.name())).findFirst();
    if (person.isEmpty()) {
      giveUp(outbox.deliver(to, outbox.unsent(to, MOST), Micros.of(now)), now);
      return;
    }
    int left = budget(to, now);
    if (left == 0 || outbox.stuck(to)) {
      return;
    }
    boolean reachable = roster.reachable(person.get(), now);
    List<Message> due =
        outbox.unsent(to, MOST).stream()
            .filter(each -> reachable || each.topic() != Topic.RETURNED)
            .toList();
    if (!due.isEmpty()) {
      for (List<Message> mail : mails(due, left)) {
        Delivery unused = outbox.deliver(to, mail, Micros.of(now));
      }
    }
  }

  /** One for each alert, or one for all. */
  private static List<List<Message>> mails(List<Message> due, int most) {
    Map<Long, List<Message>> byAlert =
        due.stream()
            .collect(
                Collectors.groupingBy(Message::alertId, LinkedHashMap::new, Collectors.toList()));
    return byAlert.size() <= most ? new ArrayList<>(byAlert.values()) : List.of(due);
  }

  private int budget(Recipient to, Instant now) {
    List<Instant> sent =
        outbox.sent(to, Micros.of(now.minus(MailBudget.MEMORY))).stream()
            .map(Micros::instant)
            .toList();
    return MailBudget.left(sent, now);
  }

  private void giveUp(Delivery delivery, Instant now) {
    String why = delivery.to().name() + " is no longer in the file of alerts";
    outbox.note(delivery.id(), new Progress(State.FAILED, 0, Micros.of(now), why));
  }
}
