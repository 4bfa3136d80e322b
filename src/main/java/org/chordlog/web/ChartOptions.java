package org.chordlog.web;

import org.chordlog.chart.PictureSize;
import org.chordlog.chart.Theme;
import org.chordlog.chart.ViewUnit;
import org.chordlog.web.http.Call;
import org.chordlog.web.http.Route;

/** How a viewer wants a chart. */
record ChartOptions(PictureSize size, Theme theme, ViewUnit unit) {
  static ChartOptions of(Call call) {
    return new ChartOptions(
        new PictureSize(
            (int) call.query("width", 1_000, 240, 4_000),
            (int) call.query("height", 560, 160, 4_000)),
        call.choice("theme", Theme.class).orElse(Theme.PAGE),
        call.choice("unit", ViewUnit.class).orElse(ViewUnit.MM));
  }

  static Route.Draft asked(Route.Draft draft) {
    return draft
        .query("width", "integer", "px, 240 to 4000, 1000 if left out")
        .query("height", "integer", "px, 160 to 4000, 560 if left out")
        .query("theme", "string", "page (colours of the page's custom properties), light, dark")
        .query("unit", "string", "of lengths on axes, limits, labels and points: mm, inch");
  }
}
