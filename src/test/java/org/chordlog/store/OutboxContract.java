package org.chordlog.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.chordlog.store.Outbox.Channel;
import org.chordlog.store.Outbox.Counts;
import org.chordlog.store.Outbox.Delivery;
import org.chordlog.store.Outbox.Message;
import org.chordlog.store.Outbox.Progress;
import org.chordlog.store.Outbox.Recipient;
import org.chordlog.store.Outbox.State;
import org.chordlog.store.Outbox.Topic;
import org.chordlog.store.Outbox.Untold;
import org.junit.jupiter.api.Test;

/** Messages and their deliveries. */
public abstract class OutboxContract extends StoreContract {
  private static final Recipient ANN = Recipient.mail("ann@shop.example");
  private static final Recipient HOOK = Recipient.webhook("hook");

  protected OutboxContract(Opener opener) {
    super(opener);
  }

  private Outbox outbox() {
    return store.outbox();
  }

  private static Message message(Recipient to, Topic topic, long number) {
    return new Message(0, to, topic, number, 7, 5);
  }

  private Delivery delivered(Recipient to, long made, Progress progress) {
    Delivery delivery = outbox().deliver(to, outbox().unsent(to, 10), made);
    outbox().note(delivery.id(), progress);
    return new Delivery(delivery.id(), to, made, progress);
  }

  @Test
  void aMessageIsStoredOnce() {
    Message raised = message(ANN, Topic.RAISED, 3);
    assertEquals(2, outbox().add(List.of(raised, message(ANN, Topic.RETURNED, 3), raised)));
    assertEquals(1, outbox().add(List.of(raised, message(HOOK, Topic.RAISED, 3))));
    reopen();
    List<Message> mails = outbox().unsent(ANN, 10);
    assertEquals(new Message(mails.get(0).id(), ANN, Topic.RAISED, 3, 7, 5), mails.get(0));
    assertEquals(2, mails.size());
    assertEquals(List.of(ANN), outbox().waiting(Channel.MAIL));
    assertEquals(List.of(HOOK), outbox().waiting(Channel.WEBHOOK));
    assertEquals(mails.subList(0, 1), outbox().unsent(ANN, 1));
    assertEquals(
        List.of(ANN, HOOK), outbox().about(Topic.RAISED, 3).stream().map(Message::to).toList());
  }

  @Test
  void aDeliveryCarriesItsMessagesUntilItEnds() {
    assertEquals(
        2, outbox().add(List.of(message(ANN, Topic.RAISED, 3), message(ANN, Topic.DAILY, 4))));
    List<Message> both = outbox().unsent(ANN, 10);
    Delivery made = outbox().deliver(ANN, both, 100);
    assertEquals(List.of(), outbox().unsent(ANN, 10));
    assertEquals(List.of(made), outbox().due(Channel.MAIL, 100, 10));
    assertEquals(List.of(), outbox().due(Channel.WEBHOOK, 100, 10));
    assertEquals(List.of(), outbox().due(Channel.MAIL, 99, 10));
    assertFalse(outbox().stuck(ANN));
    outbox().note(made.id(), new Progress(State.WAITING, 1, 200, "no answer"));
    reopen();
    assertEquals(List.of(), outbox().due(Channel.MAIL, 199, 10));
    assertEquals("no answer", outbox().due(Channel.MAIL, 200, 10).get(0).progress().problem());
    assertTrue(outbox().stuck(ANN));
    assertEquals(both, outbox().messages(made.id()));
    assertEquals(new Counts(0, 1, 0, 0), outbox().counts());
    outbox().note(made.id(), new Progress(State.DELIVERED, 2, 210, ""));
    assertFalse(outbox().stuck(ANN));
    assertEquals(List.of(210L), outbox().sent(ANN, 0));
    assertEquals(List.of(), outbox().sent(HOOK, 0));
    assertEquals(new Counts(0, 0, 1, 0), outbox().counts());
  }

  @Test
  void whatWasGivenUpIsKnownByItsMessage() {
    assertEquals(1, outbox().add(List.of(message(ANN, Topic.RAISED, 3))));
    Delivery failed = delivered(ANN, 100, new Progress(State.FAILED, 9, 300, "refused"));
    assertTrue(outbox().failed(Topic.RAISED, 3));
    assertFalse(outbox().failed(Topic.RAISED, 4));
    assertEquals(List.of(failed), outbox().newest(State.FAILED, 100, 10));
    assertEquals(List.of(), outbox().newest(State.FAILED, 101, 10));
    assertEquals(List.of(), outbox().sent(ANN, 0));
  }

  @Test
  void whoCouldNotBeToldOfAnAlertIsKnownUntilItIsDelivered() {
    assertEquals(
        3,
        outbox()
            .add(
                List.of(
                    message(ANN, Topic.RAISED, 3),
                    message(ANN, Topic.DAILY, 4),
                    message(HOOK, Topic.EVENT, 3))));
    Delivery failed = delivered(ANN, 100, new Progress(State.FAILED, 9, 300, "refused"));
    Delivery made = outbox().deliver(HOOK, outbox().unsent(HOOK, 10), 110);
    assertEquals(List.of(new Untold(7, failed)), outbox().untold(10));
    Progress again = new Progress(State.WAITING, 1, 400, "no answer");
    outbox().note(made.id(), again);
    Untold waiting = new Untold(7, new Delivery(made.id(), HOOK, 110, again));
    assertEquals(List.of(waiting, new Untold(7, failed)), outbox().untold(10));
    assertEquals(List.of(waiting), outbox().untold(1));
    outbox().note(made.id(), new Progress(State.DELIVERED, 2, 410, ""));
    assertEquals(List.of(new Untold(7, failed)), outbox().untold(10));
  }

  @Test
  void whatEndedLongAgoIsForgotten() {
    for (int day = 1; day <= 3; day++) {
      assertEquals(1, outbox().add(List.of(message(ANN, Topic.DAILY, day))));
      Delivery unused =
          delivered(ANN, day, new Progress(day < 3 ? State.DELIVERED : State.WAITING, 1, day, ""));
    }
    outbox().forget(2);
    assertEquals(List.of(2L, 3L), outbox().sent(ANN, 0));
    assertEquals(List.of(), outbox().about(Topic.DAILY, 1));
    assertEquals(1, outbox().about(Topic.DAILY, 2).size());
    outbox().forget(99);
    assertEquals(new Counts(0, 1, 0, 0), outbox().counts());
  }
}
