package org.chordlog.notify.send;

import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Proxy;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.concurrent.locks.LockSupport;
import org.chordlog.notify.channel.MailServer;
import org.chordlog.notify.channel.MailServer.Encryption;
import org.chordlog.notify.people.Retry;
import org.chordlog.store.Outbox;
import org.chordlog.store.Outbox.Channel;
import org.chordlog.store.Store;
import org.chordlog.store.open.Stores;

/** A process that sends what is due and never notes that it did: to be killed there. */
final class KilledDispatcher {
  private KilledDispatcher() {}

  /** Arguments: data directory, port of the mail server, its issuer. */
  public static void main(String[] arguments) {
    MailServer mail =
        new MailServer(
            "127.0.0.1",
            Integer.parseInt(arguments[1]),
            Encryption.STARTTLS,
            "chordlog@shop.example",
            null,
            Path.of(arguments[2]));
    Store store = Stores.open(Path.of(arguments[0]));
    var settings = Told.settings(mail, List.of());
    ByMail way = new ByMail(settings, mail, store, Clock.systemUTC());
    new Courier(Channel.MAIL, Retry.MAIL, forgetful(store.outbox()), Clock.systemUTC(), way).run();
  }

  private static Outbox forgetful(Outbox real) {
    return (Outbox)
        Proxy.newProxyInstance(
            Outbox.class.getClassLoader(),
            new Class<?>[] {Outbox.class},
            (proxy, method, values) -> {
              if (method.getName().equals("note")) {
                System.out.println("sent");
                while (true) {
                  LockSupport.park();
                }
              }
              try {
                return method.invoke(real, values);
              } catch (InvocationTargetException e) {
                throw e.getCause();
              }
            });
  }
}
