package org.chordlog.store;

import java.util.List;
import org.chordlog.measure.Check;

/**
 * What is told about alerts: messages, each to one recipient and once, and deliveries, which carry
 * one or more messages to one recipient and are attempted until they succeed or are given up.
 */
public interface Outbox {
  /** By what it goes out. Names are stored. */
  enum Channel {
    MAIL,
    WEBHOOK
  }

  /** A mail address, or the name of a webhook. */
  record Recipient(Channel channel, String name) {
    public Recipient {
      Check.text("recipient", name);
    }

    public static Recipient mail(String address) {
      return new Recipient(Channel.MAIL, address);
    }

    public static Recipient webhook(String name) {
      return new Recipient(Channel.WEBHOOK, name);
    }
  }

  /** What a message tells. Names are stored. */
  enum Topic {
    /** An alert asks for somebody; the number is the event with which it began to. */
    RAISED,
    /** What that alert is about is no longer so; the number is the same. */
    RETURNED,
    /** An event of an alert, to a program; the number is the event. */
    EVENT,
    /** All is still watched; the number is the day, counted from 1970. */
    DAILY
  }

  /** One of a recipient, topic and number; {@code alertId} is 0 where it is about no alert. */
  record Message(long id, Recipient to, Topic topic, long number, long alertId, long atMicros) {}

  /** Names are stored. */
  enum State {
    WAITING,
    DELIVERED,
    /** Given up. */
    FAILED
  }

  /**
   * How far a delivery is: attempts so far, when the next is due (when it ended, once it has), and
   * what was wrong with the last one (empty: nothing).
   */
  record Progress(State state, int attempts, long atMicros, String problem) {}

  /** Messages on their way. */
  record Delivery(long id, Recipient to, long madeMicros, Progress progress) {}

  /** A delivery about that alert which was attempted and did not succeed. */
  record Untold(long alertId, Delivery delivery) {}

  /** Messages that no delivery carries yet, and deliveries by state. */
  record Counts(long unsent, long waiting, long delivered, long failed) {}

  /** Stores those that are not stored yet; how many they were. */
  int add(List<Message> messages);

  /** For whom there are messages that no delivery carries yet. */
  List<Recipient> waiting(Channel channel);

  /** Up to {@code limit} of his messages that no delivery carries yet, by id. */
  List<Message> unsent(Recipient to, int limit);

  /** A new delivery, due at once, of those messages that no other carries. */
  Delivery deliver(Recipient to, List<Message> messages, long atMicros);

  /** The messages that a delivery carries, by id. */
  List<Message> messages(long deliveryId);

  /** Messages of that topic and number, by id. */
  List<Message> about(Topic topic, long number);

  /** Whether a delivery of such a message was given up. */
  boolean failed(Topic topic, long number);

  /** Up to {@code limit} deliveries whose next attempt is due, the oldest first. */
  List<Delivery> due(Channel channel, long nowMicros, int limit);

  void note(long deliveryId, Progress progress);

  /** When deliveries to that recipient went out since then, those on their way too, ascending. */
  List<Long> sent(Recipient to, long sinceMicros);

  /** Whether a delivery to that recipient was attempted and waits for its next attempt. */
  boolean stuck(Recipient to);

  /** Up to {@code limit} deliveries in that state since then, the newest first. */
  List<Delivery> newest(State state, long sinceMicros, int limit);

  /** Up to {@code limit} that tell of an alert and could not be delivered yet, the newest first. */
  List<Untold> untold(int limit);

  Counts counts();

  /** Removes what ended before then. */
  void forget(long beforeMicros);
}
