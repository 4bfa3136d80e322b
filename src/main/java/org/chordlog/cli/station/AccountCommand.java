package org.chordlog.cli.station;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.NoSuchElementException;
import org.chordlog.account.Entrance;
import org.chordlog.account.People;
import org.chordlog.account.Role;
import org.chordlog.cli.common.JsonText;
import org.chordlog.store.Accounts.Person;
import org.chordlog.store.Store;
import org.chordlog.store.open.Stores;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Accounts of people, and tokens of programs, at a running service. */
@Command(
    name = "account",
    mixinStandardHelpOptions = true,
    description = {
      "Looks after the accounts of people who sign in, and the tokens of programs.",
      "The running service is asked, with the token of a program that may administer"
          + " (--token-file). Only recover works on the data itself, with the service stopped."
    })
public final class AccountCommand implements Runnable {
  private static final String AT = "/api/accounts";
  private static final String ROLES =
      "viewer, operator, gauge-keeper, quality, maintenance, administrator";

  /** Whose account. */
  static final class Who {
    @Parameters(paramLabel = "NAME", description = "Name of the person.")
    private String name = "";
  }

  /** Which roles. */
  static final class Roles {
    @Option(
        names = "--role",
        required = true,
        split = ",",
        paramLabel = "ROLE",
        description = ROLES + "; may be repeated.")
    private List<String> names = List.of();
  }

  @Spec private CommandSpec spec;

  @Override
  public void run() {
    throw new ParameterException(spec.commandLine(), "What to do is missing, such as list or add.");
  }

  private static void tell(CommandSpec spec, ServiceAddress service, JsonNode answer, String said) {
    PrintWriter out = spec.commandLine().getOut();
    out.println(service.json() ? answer.toPrettyString() : said);
    out.flush();
  }

  private static JsonNode found(JsonNode all, String name) {
    for (JsonNode each : all) {
      if (each.path("name").asText().equalsIgnoreCase(name)) {
        return each;
      }
    }
    throw new NoSuchElementException("There is no " + name + "; list shows what there is.");
  }

  private static String at(ServiceClient client, String name, String what) {
    return AT + "/" + found(client.get(AT), name).path("id").asLong() + what;
  }

  private static String coded(JsonNode answer) {
    return coded(answer.at("/account/name").asText(), answer.path("code").asText());
  }

  private static String coded(String name, String code) {
    return name
        + " chooses a password at /sign-in.html with the code "
        + code
        + ", within 24 hours.";
  }

  @Command(name = "list", mixinStandardHelpOptions = true, description = "Lists the accounts.")
  void list(@Mixin ServiceAddress service) {
    JsonNode all = service.client("").get(AT);
    StringBuilder text = new StringBuilder();
    for (JsonNode each : all) {
      text.append(text.isEmpty() ? "" : System.lineSeparator()).append(line(each));
    }
    tell(spec, service, all, text.isEmpty() ? "There is no account yet." : text.toString());
  }

  private static String line(JsonNode account) {
    List<String> roles = new ArrayList<>();
    account.path("roles").forEach(each -> roles.add(Role.valueOf(each.asText()).words()));
    String state =
        account.path("disabled").asBoolean()
            ? ", disabled"
            : account.path("activated").asBoolean() ? "" : ", has not chosen a password yet";
    return account.path("name").asText() + ": " + String.join(", ", roles) + state;
  }

  @Command(name = "add", mixinStandardHelpOptions = true, description = "Makes an account.")
  void add(@Mixin ServiceAddress service, @Mixin Who who, @Mixin Roles roles) {
    JsonNode made = service.client("").post(AT, Map.of("name", who.name, "roles", roles.names));
    tell(spec, service, made, coded(made));
  }

  @Command(
      name = "roles",
      mixinStandardHelpOptions = true,
      description = "Gives an account other roles; the person signs in again.")
  void roles(@Mixin ServiceAddress service, @Mixin Who who, @Mixin Roles roles) {
    ServiceClient client = service.client("");
    JsonNode now = client.post(at(client, who.name, "/roles"), Map.of("roles", roles.names));
    tell(spec, service, now, line(now));
  }

  @Command(
      name = "disable",
      mixinStandardHelpOptions = true,
      description = "Disables an account at once; what it recorded stays.")
  void disable(@Mixin ServiceAddress service, @Mixin Who who) {
    disabled(service, who.name, true);
  }

  @Command(
      name = "enable",
      mixinStandardHelpOptions = true,
      description = "Enables an account again.")
  void enable(@Mixin ServiceAddress service, @Mixin Who who) {
    disabled(service, who.name, false);
  }

  private void disabled(ServiceAddress service, String name, boolean disabled) {
    ServiceClient client = service.client("");
    JsonNode now = client.post(at(client, name, "/disabled"), Map.of("disabled", disabled));
    tell(spec, service, now, line(now));
  }

  @Command(
      name = "code",
      mixinStandardHelpOptions = true,
      description = "Makes a code by which someone who forgot the password chooses a new one.")
  void code(@Mixin ServiceAddress service, @Mixin Who who) {
    ServiceClient client = service.client("");
    JsonNode made = client.post(at(client, who.name, "/code"), Map.of());
    tell(spec, service, made, coded(made));
  }

  @Command(
      name = "token",
      mixinStandardHelpOptions = true,
      description = "Makes a token for a program, or revokes one; it is shown once.")
  void token(
      @Mixin ServiceAddress service,
      @Parameters(paramLabel = "NAME", description = "Name of the program.") String name,
      @Option(
              names = "--right",
              split = ",",
              paramLabel = "RIGHT",
              description =
                  "look, measure, answer, job, judge, gauge, machine, alert, configure,"
                      + " administer; may be repeated (look).")
          @Nullable List<String> rights,
      @Option(
              names = "--days",
              defaultValue = "365",
              paramLabel = "N",
              description = "Days that it is valid, 1 to 366 (${DEFAULT-VALUE}).")
          int days,
      @Option(names = "--revoke", description = "Revoke the token of that name.") boolean revoke) {
    ServiceClient client = service.client("");
    if (revoke) {
      long id = found(client.get("/api/tokens"), name).path("id").asLong();
      tell(spec, service, client.delete("/api/tokens/" + id), name + " is revoked.");
      return;
    }
    List<String> wanted = rights == null ? List.of("look") : rights;
    JsonNode made =
        client.post("/api/tokens", Map.of("name", name, "rights", wanted, "days", days));
    tell(spec, service, made, made.path("secret").asText());
  }

  @Command(
      name = "recover",
      mixinStandardHelpOptions = true,
      description =
          "Makes a code for an account on this computer, with the service stopped: for an"
              + " administrator who forgot the password.")
  void recover(
      @Parameters(paramLabel = "NAME", description = "Name of the account.") String name,
      @Option(
              names = "--data",
              required = true,
              paramLabel = "DIR",
              description = "Data directory.")
          Path data,
      @Option(names = "--json", description = "Print JSON.") boolean json) {
    try (Store store = Stores.open(data)) {
      People people = new Entrance(store.accounts(), Clock.systemUTC()).people();
      Person person =
          people.all().stream()
              .filter(each -> each.name().equalsIgnoreCase(name))
              .findFirst()
              .orElseThrow(() -> new NoSuchElementException("There is no account " + name + "."));
      if (person.disabled()) {
        Person unused = people.disable(person.id(), false, "this computer");
      }
      String code = people.newCode(person.id(), "this computer").code();
      PrintWriter out = spec.commandLine().getOut();
      out.println(
          json
              ? JsonText.of(Map.of("account", person.name(), "code", code))
              : coded(person.name(), code));
      out.flush();
    }
  }
}
