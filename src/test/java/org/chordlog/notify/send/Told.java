package org.chordlog.notify.send;

import java.net.URI;
import java.time.Instant;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.List;
import java.util.Set;
import org.chordlog.measure.Lengths;
import org.chordlog.measure.Recorded;
import org.chordlog.measure.alert.Alert;
import org.chordlog.measure.alert.AlertAudience;
import org.chordlog.measure.alert.AlertEvent;
import org.chordlog.measure.alert.AlertEvent.What;
import org.chordlog.measure.alert.AlertEvidence;
import org.chordlog.measure.alert.AlertKey;
import org.chordlog.measure.alert.AlertState;
import org.chordlog.measure.alert.AlertStatus;
import org.chordlog.notify.channel.MailServer;
import org.chordlog.notify.channel.MailServer.Encryption;
import org.chordlog.notify.channel.Webhook;
import org.chordlog.notify.mail.MailProcess;
import org.chordlog.notify.people.Escalation;
import org.chordlog.notify.people.Group;
import org.chordlog.notify.people.Hours;
import org.chordlog.notify.people.Person;
import org.chordlog.notify.people.Roster;
import org.chordlog.notify.settings.AlertSettings;
import org.chordlog.store.Alerts;

/** Invented people of an invented shop, and what happens to alerts there. */
final class Told {
  static final Person FITTER = person("fitter");
  static final Person BENDER = person("bender");
  static final Person NIGHT =
      new Person(
          "night",
          "night@shop.example",
          List.of(Hours.daily(LocalTime.of(22, 0), LocalTime.of(6, 0))));
  private static final ZoneId UTC = ZoneId.of("UTC");

  private Told() {}

  private static Person person(String name) {
    return new Person(name, name + "@shop.example", List.of());
  }

  static AlertSettings settings(MailServer mail, List<Webhook> webhooks) {
    Set<AlertAudience> maintenance = Set.of(AlertAudience.MAINTENANCE);
    List<Group> groups =
        List.of(
            new Group("fitters", maintenance, false, List.of(FITTER, NIGHT)),
            new Group("benders", Set.of(AlertAudience.OPERATOR), false, List.of(BENDER)));
    return new AlertSettings(
        new AlertSettings.Site(
            "Invented shop", URI.create("https://chordlog.example/"), Lengths.MM),
        new Roster(groups, UTC, null, Escalation.USUAL),
        new AlertSettings.Daily(LocalTime.of(7, 0), List.of()),
        mail,
        webhooks);
  }

  /** The settings with the daily mail to the fitter. */
  static AlertSettings daily(AlertSettings of) {
    return new AlertSettings(
        of.site(),
        of.roster(),
        new AlertSettings.Daily(LocalTime.of(7, 0), List.of(FITTER)),
        of.mail(),
        of.webhooks());
  }

  static MailServer at(MailProcess server) {
    return new MailServer(
        "127.0.0.1",
        server.port(),
        Encryption.STARTTLS,
        "chordlog@shop.example",
        null,
        server.issuer());
  }

  /** Where nobody answers. */
  static MailServer nowhere() {
    return new MailServer("127.0.0.1", 1, Encryption.NONE, "chordlog@shop.example", null, null);
  }

  static AlertEvent raised(AlertKey key, AlertEvidence evidence, Instant at) {
    AlertStatus status = AlertStatus.raised(Micros.of(at), false);
    Recorded by = new Recorded(Micros.of(at), AlertEvent.SERVICE);
    return new AlertEvent(
        What.RAISED, AlertState.NORMAL, Alert.raised(key, status, evidence), by, "");
  }

  static AlertEvent next(Alert before, What what, AlertState state, Instant at) {
    boolean present = what != What.RETURNED && before.status().present();
    AlertStatus status = before.status().in(state, Micros.of(at)).withPresent(present);
    Recorded by = new Recorded(Micros.of(at), "somebody");
    return new AlertEvent(what, before.state(), before.next(status), by, "");
  }

  static Alert add(Alerts to, AlertEvent event) {
    return to.add(event).alert();
  }
}
