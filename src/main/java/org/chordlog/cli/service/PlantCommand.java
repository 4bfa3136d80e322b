package org.chordlog.cli.service;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Map;
import java.util.function.BiFunction;
import org.chordlog.cli.common.JsonText;
import org.chordlog.store.PlantAddress;
import org.chordlog.store.PlantAdmin;
import org.chordlog.store.open.Stores;
import org.chordlog.trust.SecretFile;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** The database of a plant: its schema, and the logins of who uses it. */
@Command(
    name = "plant",
    mixinStandardHelpOptions = true,
    description = {
      "Sets up the PostgreSQL database that several workshop computers deliver to.",
      "Signs in as somebody who may create schemas and roles there."
    })
public final class PlantCommand implements Runnable {
  /** Where the database is, and as whom to sign in. */
  static final class Place {
    @Option(
        names = "--database",
        required = true,
        paramLabel = "URL",
        description = "postgresql://HOST:PORT/DATABASE, without user and password.")
    private String url = "";

    @Option(
        names = "--user",
        paramLabel = "NAME",
        defaultValue = "postgres",
        description = "User of the database (${DEFAULT-VALUE}).")
    private String user = "";

    @Option(
        names = "--password-file",
        paramLabel = "FILE",
        description = "File with the password of that user, where it needs one.")
    private @Nullable Path password;

    @Option(
        names = "--database-certificates",
        paramLabel = "FILE",
        description = "Certificates (PEM) of who issued the server's; else those Java trusts.")
    private @Nullable Path trusted;

    @Option(names = "--json", description = "Print JSON.")
    private boolean json;

    PlantAdmin admin() {
      Path file = password;
      SecretFile secret = file == null ? null : new SecretFile("--password-file", file);
      return Stores.plantAdmin(
          PlantAddress.of(url, user, () -> secret == null ? "" : secret.read(), trusted));
    }
  }

  /** A new login. */
  static final class Login {
    @Parameters(paramLabel = "NAME", description = "Name, as pages and messages show it.")
    private String name = "";

    @Option(
        names = "--new-password-file",
        required = true,
        paramLabel = "FILE",
        description = "New file that gets the login's password, for its owner alone.")
    private Path file = Path.of("");
  }

  @Spec private CommandSpec spec;

  @Override
  public void run() {
    throw new ParameterException(
        spec.commandLine(), "What to do is missing, such as create or add-edge.");
  }

  @Command(
      name = "create",
      mixinStandardHelpOptions = true,
      description = "Creates schema and roles in an empty database, or brings them up to date.")
  void create(@Mixin Place place) {
    int version = place.admin().create();
    tell(
        place,
        Map.of("schemaVersion", version),
        "This is the database of a plant now (schema version " + version + ").");
  }

  @Command(
      name = "add-edge",
      mixinStandardHelpOptions = true,
      description = {
        "Makes the login of a workshop computer that delivers its records.",
        "The first data directory that signs in with it owns it from then on."
      })
  void addEdge(
      @Mixin Place place,
      @Mixin Login login,
      @Option(
              names = "--site",
              paramLabel = "SITE",
              defaultValue = "",
              description = "Where it is: works, hall.")
          String site) {
    add(place, login, (admin, password) -> admin.addEdge(login.name, site, password));
  }

  @Command(
      name = "add-reader",
      mixinStandardHelpOptions = true,
      description = "Makes the login of a program that shows the plant: serve --plant.")
  void addReader(@Mixin Place place, @Mixin Login login) {
    add(place, login, (admin, password) -> admin.addReader(login.name, password));
  }

  private void add(Place place, Login login, BiFunction<PlantAdmin, String, String> make) {
    NewPassword password = new NewPassword(login.file);
    String secret = password.make();
    try {
      String user = make.apply(place.admin(), secret);
      tell(
          place,
          Map.of("user", user, "passwordFile", login.file.toString()),
          "The user is " + user + "; the password is in " + login.file + ".");
    } catch (RuntimeException e) {
      password.drop();
      throw e;
    }
  }

  private void tell(Place place, Map<String, ?> answer, String said) {
    PrintWriter out = spec.commandLine().getOut();
    out.println(place.json ? JsonText.of(answer) : said);
    out.flush();
  }
}
