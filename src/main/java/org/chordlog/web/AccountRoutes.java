package org.chordlog.web;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import org.chordlog.account.Entrance;
import org.chordlog.account.People;
import org.chordlog.account.Right;
import org.chordlog.account.Tokens;
import org.chordlog.measure.BadInput;
import org.chordlog.store.Accounts.Person;
import org.chordlog.store.Accounts.Token;
import org.chordlog.web.http.Call;
import org.chordlog.web.http.Needed;
import org.chordlog.web.http.Refusal;
import org.chordlog.web.http.Route;
import org.chordlog.web.http.Times;
import org.chordlog.web.http.WebSettings;
import org.jspecify.annotations.Nullable;

/** Accounts of people and tokens of programs, for the administrator. */
final class AccountRoutes {
  private static final String PEOPLE = "/api/accounts";
  private static final String ONE = PEOPLE + "/{account}";
  private static final String TOKENS = "/api/tokens";
  private final boolean accounts;
  private final Entrance entrance;

  AccountRoutes(WebSettings settings, Entrance entrance) {
    this.accounts = settings.reach().accounts();
    this.entrance = entrance;
  }

  /** An account, without its secrets. */
  record AccountView(
      long id,
      String name,
      Set<String> roles,
      boolean disabled,
      @JsonPropertyDescription("whether a password was chosen, or none is needed")
          boolean activated,
      @JsonPropertyDescription("whether the person signs in at the provider") boolean elsewhere,
      boolean pin,
      boolean badge) {
    static AccountView of(Person person) {
      return new AccountView(
          person.id(),
          person.name(),
          new TreeSet<>(person.roles()),
          person.disabled(),
          !person.secrets().password().isEmpty() || !person.secrets().identity().isEmpty(),
          !person.secrets().identity().isEmpty(),
          !person.secrets().pin().isEmpty(),
          !person.secrets().badge().isEmpty());
    }
  }

  /** An account with the code that its person chooses a password by; shown once. */
  record CodeView(AccountView account, String code) {
    static CodeView of(People.WithCode made) {
      return new CodeView(AccountView.of(made.person()), made.code());
    }
  }

  /** A token, without its secret. */
  record TokenView(
      long id,
      String name,
      Set<String> rights,
      String validUntil,
      boolean revoked,
      @JsonPropertyDescription("since the service started; null for not yet")
          @Nullable String usedAt) {}

  /** A token with its secret, shown once. */
  record NewToken(TokenView token, String secret) {}

  /** A new account. */
  record AccountForm(@Nullable String name, @Nullable List<String> roles) {}

  /** Roles in place of those of now. */
  record RolesForm(@Needed @Nullable List<String> roles) {}

  /** Whether it may be used. */
  record DisabledForm(boolean disabled) {}

  /** Six digits, or empty for none. */
  record PinForm(@Nullable String pin) {}

  /** What its reader types, or empty for none. */
  record BadgeForm(@Nullable String badge) {}

  /** A new token; {@code days} that it is valid. */
  record TokenForm(
      @Needed @Nullable String name,
      @Needed @Nullable List<String> rights,
      @Needed @Nullable Integer days) {}

  List<Route> routes() {
    return List.of(
        Route.get(PEOPLE, "Accounts of people")
            .needs(Right.ADMINISTER)
            .answersList(
                AccountView.class,
                call -> entrance.people().all().stream().map(AccountView::of).toList()),
        post(PEOPLE, "Makes an account; its code, shown once, is valid for 24 h")
            .body(AccountForm.class)
            .creates(CodeView.class, this::add),
        post(ONE + "/roles", "Gives an account other roles; its sessions end")
            .body(RolesForm.class)
            .answers(AccountView.class, this::roles),
        post(ONE + "/disabled", "Disables or enables an account; its sessions end")
            .body(DisabledForm.class)
            .answers(AccountView.class, this::disable),
        post(ONE + "/code", "Takes the password away and gives a new code; its sessions end")
            .answers(CodeView.class, this::code),
        post(ONE + "/pin", "Sets the PIN for shared screens")
            .body(PinForm.class)
            .answers(AccountView.class, this::pin),
        post(ONE + "/badge", "Sets the badge for shared screens")
            .body(BadgeForm.class)
            .answers(AccountView.class, this::badge),
        Route.get(TOKENS, "Tokens of programs")
            .needs(Right.ADMINISTER)
            .answersList(
                TokenView.class, call -> entrance.tokens().all().stream().map(this::view).toList()),
        post(TOKENS, "Makes a token; its secret is shown once")
            .body(TokenForm.class)
            .creates(NewToken.class, this::token),
        Route.delete(Right.ADMINISTER, TOKENS + "/{token}", "Revokes a token for good")
            .does(call -> tokens().revoke(call.id("token"), call.by())));
  }

  private static Route.Draft post(String path, String summary) {
    return Route.post(Right.ADMINISTER, path, summary);
  }

  private People people() {
    if (!accounts) {
      throw Refusal.conflict(
          "People do not sign in at this service: they do once it is started with --accounts.");
    }
    return entrance.people();
  }

  private Tokens tokens() {
    People unused = people();
    return entrance.tokens();
  }

  private CodeView add(Call call) {
    AccountForm form = call.body(AccountForm.class);
    String name = Objects.requireNonNullElse(form.name(), "");
    return CodeView.of(people().add(name, list(form.roles()), call.by()));
  }

  private AccountView roles(Call call) {
    List<String> roles = list(call.body(RolesForm.class).roles());
    return ended(people().roles(call.id("account"), roles, call.by()));
  }

  private AccountView disable(Call call) {
    boolean disabled = call.body(DisabledForm.class).disabled();
    return ended(people().disable(call.id("account"), disabled, call.by()));
  }

  private CodeView code(Call call) {
    People.WithCode made = people().newCode(call.id("account"), call.by());
    entrance.endOf(made.person().id());
    return CodeView.of(made);
  }

  private AccountView pin(Call call) {
    String pin = Objects.requireNonNullElse(call.body(PinForm.class).pin(), "");
    return ended(people().pin(call.id("account"), pin, call.by()));
  }

  private AccountView badge(Call call) {
    String badge = Objects.requireNonNullElse(call.body(BadgeForm.class).badge(), "");
    return ended(people().badge(call.id("account"), badge, call.by()));
  }

  private AccountView ended(Person person) {
    entrance.endOf(person.id());
    return AccountView.of(person);
  }

  private NewToken token(Call call) {
    TokenForm form = call.body(TokenForm.class);
    Integer days = form.days();
    if (days == null) {
      throw new BadInput("days", "", "is missing", "1 to 366");
    }
    String name = Objects.requireNonNullElse(form.name(), "");
    Tokens.Made made = tokens().add(name, list(form.rights()), days, call.by());
    return new NewToken(view(made.token()), made.secret());
  }

  private TokenView view(Token token) {
    long used = entrance.tokens().usedMicros(token);
    return new TokenView(
        token.id(),
        token.name(),
        new TreeSet<>(token.rights()),
        Times.iso(token.untilMicros()),
        token.revoked(),
        used == 0 ? null : Times.iso(used));
  }

  private static List<String> list(@Nullable List<String> given) {
    return given == null ? List.of() : given;
  }
}
