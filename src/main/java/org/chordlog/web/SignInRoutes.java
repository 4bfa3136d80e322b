package org.chordlog.web;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.chordlog.account.Entrance;
import org.chordlog.web.http.Route;
import org.chordlog.web.http.WebSettings;
import org.chordlog.web.openid.Provider;
import org.jspecify.annotations.Nullable;

/** All by which people and programs come in, and by which it is said who may. */
final class SignInRoutes {
  private SignInRoutes() {}

  static List<Route> of(WebSettings settings, Entrance entrance) {
    List<Route> all = new ArrayList<>(ofSessions(settings, entrance));
    all.addAll(ofAccounts(settings, entrance));
    return all;
  }

  /** What the administrator says of people, programs and screens. */
  static List<Route> ofAccounts(WebSettings settings, Entrance entrance) {
    List<Route> all = new ArrayList<>(new AccountRoutes(settings, entrance).routes());
    all.addAll(new ScreenRoutes(entrance.screens()).routes());
    return all;
  }

  /** Without the accounts. */
  static List<Route> ofSessions(WebSettings settings, Entrance entrance) {
    Path openId = settings.reach().provider();
    @Nullable Provider provider = openId == null ? null : Provider.of(openId);
    String called = provider == null ? "" : provider.settings().name();
    List<Route> all = new ArrayList<>();
    all.addAll(new SessionRoutes(settings, called, entrance).routes());
    all.addAll(new ProviderRoutes(provider, entrance).routes());
    return all;
  }
}
