package org.chordlog.web;

import org.chordlog.account.Caller;
import org.chordlog.account.Right;
import org.chordlog.measure.alert.AlertKind;
import org.chordlog.notify.rule.AlertMove;
import org.chordlog.web.http.Call;
import org.chordlog.web.http.Refusal;

/**
 * Who may do what to an alert, where people sign in. Whoever is told of alerts may say that he
 * knows and whose it is; to silence one needs the right of those whom it concerns first.
 */
final class AlertRights {
  private AlertRights() {}

  static boolean may(Call call, AlertMove move, AlertKind kind) {
    Caller caller = call.caller();
    return caller == null || (caller.may(Right.ALERT) && caller.may(needed(move, kind)));
  }

  /** Refused with 403 and the roles that it takes. */
  static void require(Call call, AlertMove move, AlertKind kind) {
    Caller caller = call.caller();
    if (caller != null && !may(call, move, kind)) {
      throw new Refusal(403, "Not among your rights", caller.refusal(needed(move, kind)));
    }
  }

  private static Right needed(AlertMove move, AlertKind kind) {
    return switch (move) {
      case ACKNOWLEDGE, ASSIGN, UNSHELVE, PUT_BACK_IN_SERVICE -> Right.ALERT;
      case SHELVE, TAKE_OUT_OF_SERVICE -> ofThoseConcerned(kind);
    };
  }

  private static Right ofThoseConcerned(AlertKind kind) {
    return switch (kind.audiences().get(0)) {
      case MAINTENANCE -> Right.MACHINE;
      case OPERATOR -> Right.MEASURE;
      case GAUGE_KEEPER -> Right.GAUGE;
      case QUALITY -> Right.JUDGE;
      case ADMINISTRATOR -> Right.ADMINISTER;
    };
  }
}
