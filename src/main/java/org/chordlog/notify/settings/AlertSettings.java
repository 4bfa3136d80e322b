package org.chordlog.notify.settings;

import java.net.URI;
import java.time.LocalTime;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.chordlog.measure.Lengths;
import org.chordlog.measure.alert.AlertAudience;
import org.chordlog.notify.channel.MailServer;
import org.chordlog.notify.channel.Webhook;
import org.chordlog.notify.people.Group;
import org.chordlog.notify.people.Person;
import org.chordlog.notify.people.Roster;
import org.jspecify.annotations.Nullable;

/** Who is told of alerts, and how. */
public record AlertSettings(
    Site site, Roster roster, Daily daily, @Nullable MailServer mail, List<Webhook> webhooks) {
  public AlertSettings {
    webhooks = List.copyOf(webhooks);
  }

  /** What messages say of this shop: its name, where its pages are, its unit of lengths. */
  public record Site(String name, URI pages, Lengths lengths) {
    /** Of a page of the service. */
    public String link(String page) {
      return pages.resolve(page).toString();
    }
  }

  /** The mail that says each day that all is still watched: when, and to whom. */
  public record Daily(LocalTime at, List<Person> people) {
    public Daily {
      people = List.copyOf(people);
    }
  }

  /** Audiences that nobody answers for; the next step of escalation is told in their place. */
  public Set<AlertAudience> unanswered() {
    Set<AlertAudience> none = EnumSet.allOf(AlertAudience.class);
    for (Group each : roster.groups()) {
      none.removeAll(each.audiences());
    }
    return none;
  }
}
