package org.chordlog.web;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import java.util.List;
import org.chordlog.account.Right;
import org.chordlog.account.SharedScreens;
import org.chordlog.web.http.Route;
import org.chordlog.web.http.Times;
import org.jspecify.annotations.Nullable;

/** The screens that people share, for the administrator. */
final class ScreenRoutes {
  private static final String SCREENS = "/api/screens";
  private final SharedScreens screens;

  ScreenRoutes(SharedScreens screens) {
    this.screens = screens;
  }

  /** A shared screen. */
  record ScreenView(
      String id,
      String name,
      String sharedAt,
      @JsonPropertyDescription("who is at it; empty for nobody") String person,
      @JsonPropertyDescription("when it last asked since the service started; null for not yet")
          @Nullable String usedAt) {
    static ScreenView of(SharedScreens.Screen screen) {
      long used = screen.usedMicros();
      return new ScreenView(
          screen.id(),
          screen.name(),
          Times.iso(screen.sharedMicros()),
          screen.person(),
          used == 0 ? null : Times.iso(used));
    }
  }

  List<Route> routes() {
    return List.of(
        Route.get(SCREENS, "Screens that people share")
            .needs(Right.ADMINISTER)
            .answersList(
                ScreenView.class, call -> screens.all().stream().map(ScreenView::of).toList()),
        Route.delete(
                Right.ADMINISTER,
                SCREENS + "/{screen}",
                "Ends the sharing of a screen; whoever is there signs in again")
            .does(call -> screens.end(call.ctx().pathParam("screen"), call.by())));
  }
}
