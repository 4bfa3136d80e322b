package org.chordlog.notify.settings;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.MissingNode;
import java.net.URI;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.LengthUnit;
import org.chordlog.measure.Lengths;
import org.chordlog.measure.alert.AlertPriority;
import org.chordlog.notify.channel.MailServer;
import org.chordlog.notify.channel.Webhook;
import org.chordlog.notify.people.Escalation;
import org.chordlog.notify.people.Group;
import org.chordlog.notify.people.Hours;
import org.chordlog.notify.people.Person;
import org.chordlog.notify.people.Roster;
import org.chordlog.notify.settings.AlertSettings.Daily;
import org.chordlog.notify.settings.AlertSettings.Site;
import org.chordlog.yaml.FieldBinder;
import org.jspecify.annotations.Nullable;

/** The keys of the file of alerts, and what they make; every fault goes to the binder. */
final class AlertFields {
  static final List<String> KEYS =
      List.of(
          "site",
          "pages",
          "unit",
          "timeZone",
          "shifts",
          "quietHours",
          "people",
          "groups",
          "escalation",
          "daily",
          "mail",
          "webhooks");
  private static final int MOST = 200;
  private static final LocalTime USUAL_DAILY = LocalTime.of(7, 0);

  private final FieldBinder binder;
  private final JsonNode root;
  private final Path folder;

  /** Files named in it are beside {@code folder}. */
  AlertFields(FieldBinder binder, JsonNode root, Path folder) {
    this.binder = binder;
    this.root = root;
    this.folder = folder;
  }

  /** Null where the binder has a fault. */
  @Nullable AlertSettings settings() {
    root.fieldNames().forEachRemaining(this::refuseUnknown);
    @Nullable Site site = site();
    @Nullable ZoneId zone = zone();
    Map<String, Hours> shifts = shifts();
    Map<String, Person> people = people(shifts);
    List<Group> groups = groups(people);
    @Nullable MailServer mail = mail();
    List<Webhook> webhooks = webhooks();
    @Nullable Hours quiet = quiet();
    Escalation escalation = escalation();
    Daily daily = daily(people);
    if (!root.hasNonNull("mail") && !people.isEmpty()) {
      missing("mail", "the server that mails to people are given to");
    }
    if (people.isEmpty() && webhooks.isEmpty() && !root.hasNonNull("people")) {
      missing("people", "people with mail, or webhooks");
    }
    return site == null || zone == null
        ? null
        : new AlertSettings(
            site, new Roster(groups, zone, quiet, escalation), daily, mail, webhooks);
  }

  private void refuseUnknown(String key) {
    if (!KEYS.contains(key)) {
      binder.add(key, root.get(key), "has no such key", String.join(", ", KEYS));
    }
  }

  private void missing(String path, String allowed) {
    binder.add(path, "", "is missing", allowed);
  }

  private @Nullable String text(String key, String allowed) {
    if (!root.hasNonNull(key)) {
      missing(key, allowed);
    }
    return binder.bind(key, root.get(key), String.class);
  }

  private @Nullable Site site() {
    @Nullable String name = text("site", "the name of the shop, which messages begin with");
    @Nullable String pages =
        text("pages", "the address of the pages, as https://chordlog.example/");
    @Nullable LengthUnit unit = binder.bind("unit", root.get("unit"), LengthUnit.class);
    return name == null || pages == null
        ? null
        : binder.under(
            "",
            () ->
                new Site(
                    Words.oneLine("site", name),
                    address(pages),
                    new Lengths(unit == null ? LengthUnit.MM : unit)));
  }

  private static URI address(String pages) {
    if (!pages.matches("https?://[^\\s/?#@]+(/[^\\s?#]*)?")) {
      throw new BadInput(
          "pages", pages, "is not the address of pages", "as https://chordlog.example/");
    }
    return URI.create(pages.endsWith("/") ? pages : pages + "/");
  }

  private @Nullable ZoneId zone() {
    @Nullable String name = text("timeZone", "a name as Europe/London");
    try {
      return name == null ? null : ZoneId.of(name);
    } catch (DateTimeException e) {
      binder.add("timeZone", name, "is not a time zone", "a name as Europe/London or UTC");
      return null;
    }
  }

  private Map<String, Hours> shifts() {
    Map<String, Hours> shifts = new LinkedHashMap<>();
    each(
        "shifts",
        ShiftFields.class,
        shift -> {
          unique(shifts, shift.name());
          shifts.put(Words.required("name", shift.name()), shift.hours());
          return shift;
        });
    return shifts;
  }

  private @Nullable Hours quiet() {
    ShiftFields.@Nullable Quiet quiet =
        binder.bind("quietHours", root.get("quietHours"), ShiftFields.Quiet.class);
    return quiet == null ? null : binder.under("quietHours", quiet::hours);
  }

  private Map<String, Person> people(Map<String, Hours> shifts) {
    Map<String, Person> people = new LinkedHashMap<>();
    if (shifts.size() < root.path("shifts").size()) {
      return people; // what is wrong with a shift is not told of its people once more
    }
    each(
        "people",
        PersonFields.class,
        person -> {
          unique(people, person.name());
          people.put(Words.required("name", person.name()), person.person(shifts));
          return person;
        });
    return people;
  }

  private static void unique(Map<String, ?> known, @Nullable String name) {
    if (name != null && known.containsKey(name)) {
      throw new BadInput("name", name, "is taken", "a name of its own");
    }
  }

  private List<Group> groups(Map<String, Person> people) {
    if (people.size() < root.path("people").size()) {
      return List.of();
    }
    List<Group> groups = each("groups", GroupFields.class, fields -> fields.group(people));
    if (!people.isEmpty() && !root.hasNonNull("groups")) {
      missing("groups", "groups of people with their audiences");
    }
    return groups;
  }

  private Escalation escalation() {
    Escalation all = Escalation.USUAL;
    @Nullable JsonNode given = root.get("escalation");
    @Nullable EscalationFields fields = binder.bind("escalation", given, EscalationFields.class);
    if (fields == null) {
      return all;
    }
    for (AlertPriority each : AlertPriority.values()) {
      EscalationFields.@Nullable Times times = fields.of(each);
      if (times != null) {
        Escalation before = all;
        @Nullable Escalation with =
            binder.under(
                "escalation." + Words.lower(each), () -> before.with(each, times.waits(each)));
        all = with == null ? all : with;
      }
    }
    return all;
  }

  private Daily daily(Map<String, Person> people) {
    Daily usual = new Daily(USUAL_DAILY, List.copyOf(people.values()));
    if (people.size() < root.path("people").size()) {
      return usual;
    }
    @Nullable DailyFields fields = binder.bind("daily", root.get("daily"), DailyFields.class);
    @Nullable Daily daily =
        fields == null ? null : binder.under("daily", () -> fields.daily(usual, people));
    return daily == null ? usual : daily;
  }

  private @Nullable MailServer mail() {
    @Nullable MailFields fields = binder.bind("mail", root.get("mail"), MailFields.class);
    return fields == null ? null : binder.under("mail", () -> fields.server(folder));
  }

  private List<Webhook> webhooks() {
    Map<String, Webhook> names = new LinkedHashMap<>();
    return each(
        "webhooks",
        WebhookFields.class,
        fields -> {
          unique(names, fields.name());
          Webhook made = fields.webhook(folder);
          names.put(made.name(), made);
          return made;
        });
  }

  /** What each part of a list makes; faults are placed at the part. */
  private <F, T> List<T> each(String key, Class<F> type, Function<F, T> make) {
    JsonNode list = root.hasNonNull(key) ? root.get(key) : MissingNode.getInstance();
    if (!list.isMissingNode() && (!list.isArray() || list.size() > MOST)) {
      binder.add(key, list, "is not a list", "up to " + MOST + " entries, each after a dash");
      return List.of();
    }
    List<T> made = new ArrayList<>();
    for (int i = 0; i < list.size(); i++) {
      String path = key + "[" + i + "]";
      @Nullable F fields = binder.bind(path, list.get(i), type);
      @Nullable T one = fields == null ? null : binder.under(path, () -> make.apply(fields));
      if (one != null) {
        made.add(one);
      }
    }
    return made;
  }
}
