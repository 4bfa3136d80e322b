package org.chordlog.web;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import java.util.List;
import java.util.Set;
import org.chordlog.account.Caller;
import org.chordlog.account.Entrance;
import org.chordlog.account.Right;
import org.chordlog.measure.BadInput;
import org.chordlog.web.http.Call;
import org.chordlog.web.http.Needed;
import org.chordlog.web.http.Refusal;
import org.chordlog.web.http.Route;
import org.chordlog.web.http.SessionCookie;
import org.chordlog.web.http.WebSettings;
import org.jspecify.annotations.Nullable;

/** Signing in and out, and who is at a screen that people share. */
final class SessionRoutes {
  private static final String HERE = "/api/session";
  private final boolean accounts;
  private final String notice;
  private final String provider;
  private final Entrance entrance;

  /** {@code provider}: what it is called, empty for none. */
  SessionRoutes(WebSettings settings, String provider, Entrance entrance) {
    this.accounts = settings.reach().accounts();
    this.notice = settings.reach().notice();
    this.provider = provider;
    this.entrance = entrance;
  }

  /** Who is signed in. */
  record SessionView(
      @JsonPropertyDescription("whether people sign in at this service") boolean accounts,
      @JsonPropertyDescription("empty where nobody is signed in, or nobody is at the shared screen")
          String name,
      List<Right> rights,
      @JsonPropertyDescription("name of the shared screen; empty elsewhere") String screen,
      @JsonPropertyDescription("who may be at the shared screen, by name") Set<String> people,
      @JsonPropertyDescription("whether what is typed here travels encrypted") boolean encrypted,
      @JsonPropertyDescription("what people read before they sign in; empty for nothing")
          String notice,
      @JsonPropertyDescription("what the button of the provider says; empty where there is none")
          String provider,
      @JsonPropertyDescription("whether who is signed in has a password of this service")
          boolean password) {}

  /** Name and password. */
  record SignInForm(@Needed @Nullable String name, @Needed @Nullable String password) {}

  /** A code with the password chosen. */
  record ActivationForm(
      @Needed @Nullable String name, @Needed @Nullable String code, @Nullable String password) {}

  /** Of the one who is signed in. */
  record PasswordForm(@Needed @Nullable String now, @Needed @Nullable String next) {}

  /** A name with its PIN, or a badge alone. */
  record PersonAtScreen(@Nullable String name, @Nullable String pin, @Nullable String badge) {}

  /** What the screen is called. */
  record ScreenForm(@Needed @Nullable String name) {}

  List<Route> routes() {
    return List.of(
        Route.open(HERE, "Who is signed in").answers(SessionView.class, this::view),
        Route.post(Right.ANYONE, HERE, "Signs in; the session is a cookie")
            .body(SignInForm.class)
            .does(this::signIn),
        Route.delete(Right.ANYONE, HERE, "Signs out; at a shared screen its person leaves")
            .does(this::signOut),
        Route.post(Right.ANYONE, HERE + "/activation", "Chooses a password by a code, and signs in")
            .body(ActivationForm.class)
            .does(this::activate),
        Route.post(Right.LOOK, HERE + "/password", "Changes the password; other sessions end")
            .body(PasswordForm.class)
            .does(this::password),
        Route.post(Right.LOOK, HERE + "/person", "Says who is at a shared screen")
            .body(PersonAtScreen.class)
            .answers(SessionView.class, this::person),
        Route.post(Right.ADMINISTER, HERE + "/screen", "Makes this a screen that people share")
            .body(ScreenForm.class)
            .does(this::share));
  }

  private SessionView view(Call call) {
    call.ctx().header("Cache-Control", "no-store");
    Caller caller = call.caller();
    return view(call, caller == null ? new Caller("", Set.of(), "", "") : caller);
  }

  private SessionView view(Call call, Caller caller) {
    boolean shared = !caller.screen().isEmpty();
    return new SessionView(
        accounts,
        caller.name(),
        caller.rights().stream().sorted().toList(),
        caller.screen(),
        shared ? entrance.atScreens() : Set.of(),
        call.ctx().req().isSecure(),
        notice,
        provider,
        !shared && hasPassword(caller.name()));
  }

  private boolean hasPassword(String name) {
    return entrance
        .people()
        .active(name)
        .filter(each -> !each.secrets().password().isEmpty())
        .isPresent();
  }

  private void signIn(Call call) {
    requireAccounts();
    SignInForm form = call.body(SignInForm.class);
    String secret =
        entrance.signIn(text("name", form.name()), text("password", form.password()), at(call));
    SessionCookie.set(call.ctx(), secret, false);
  }

  private void activate(Call call) {
    requireAccounts();
    ActivationForm form = call.body(ActivationForm.class);
    String secret =
        entrance.activate(
            text("name", form.name()),
            text("code", form.code()),
            text("password", form.password()),
            at(call));
    SessionCookie.set(call.ctx(), secret, false);
  }

  private void signOut(Call call) {
    Caller caller = call.caller();
    if (caller == null || caller.session().isEmpty()) {
      return;
    }
    entrance.signOut(caller);
    if (caller.screen().isEmpty()) {
      SessionCookie.clear(call.ctx());
    }
  }

  private void password(Call call) {
    PasswordForm form = call.body(PasswordForm.class);
    Caller caller = ofPerson(call);
    entrance.password(caller, text("now", form.now()), text("next", form.next()), at(call));
  }

  private SessionView person(Call call) {
    Caller caller = caller(call);
    if (caller.screen().isEmpty()) {
      throw Refusal.conflict("This screen is not shared: sign out and in.");
    }
    PersonAtScreen form = call.body(PersonAtScreen.class);
    String badge = form.badge();
    Caller now =
        badge == null
            ? entrance.atScreen(
                caller, text("name", form.name()), text("pin", form.pin()), at(call))
            : entrance.atScreen(caller, badge, at(call));
    return view(call, now);
  }

  private void share(Call call) {
    String name = text("name", call.body(ScreenForm.class).name());
    SessionCookie.set(call.ctx(), entrance.share(ofPerson(call), name), true);
  }

  private void requireAccounts() {
    if (!accounts) {
      throw Refusal.conflict(
          "People do not sign in at this service: they do once it is started with --accounts.");
    }
  }

  private Caller caller(Call call) {
    requireAccounts();
    Caller caller = call.caller();
    if (caller == null) {
      throw new IllegalStateException("let in without a caller");
    }
    return caller;
  }

  /** Not a program, nor a shared screen. */
  private Caller ofPerson(Call call) {
    Caller caller = caller(call);
    if (caller.session().isEmpty() || !caller.screen().isEmpty()) {
      throw Refusal.conflict("Only a person who signed in by name can do this.");
    }
    return caller;
  }

  private static String at(Call call) {
    return call.ctx().ip();
  }

  private static String text(String field, @Nullable String value) {
    if (value == null || value.isBlank()) {
      throw new BadInput(field, "", "is missing", "a text");
    }
    return value;
  }
}
