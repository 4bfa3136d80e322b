package org.chordlog.cli.service;

import java.io.PrintWriter;
import java.util.Map;
import org.chordlog.account.People;
import org.chordlog.cli.common.JsonText;

/** Who can start the service makes its first administrator: the code is printed once. */
record FirstAccount(People people) {
  void tell(PrintWriter out, boolean json) {
    people.first().ifPresent(made -> tell(out, json, made));
  }

  private static void tell(PrintWriter out, boolean json, People.WithCode made) {
    String name = made.person().name();
    out.println(
        json
            ? JsonText.of(Map.of("account", name, "code", made.code()))
            : "Nobody can administer this service yet. Open /sign-in.html, enter the name "
                + name
                + " and the code "
                + made.code()
                + ", and choose a password. The code is valid for 24 hours; each start gives a new"
                + " one until it is used.");
    out.flush();
  }
}
