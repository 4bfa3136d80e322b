package org.chordlog.notify.settings;

import java.nio.file.Path;
import org.chordlog.measure.BadInput;
import org.chordlog.notify.channel.MailServer;
import org.chordlog.notify.channel.MailServer.Account;
import org.chordlog.notify.channel.MailServer.Encryption;
import org.chordlog.notify.people.Person;
import org.chordlog.trust.IssuerFile;
import org.chordlog.trust.SecretFile;
import org.jspecify.annotations.Nullable;

/** The part {@code mail}. */
record MailFields(
    @Nullable String host,
    @Nullable Integer port,
    @Nullable Encryption encryption,
    @Nullable String from,
    @Nullable String user,
    @Nullable String passwordFile,
    @Nullable String caFile) {
  MailServer server(Path folder) {
    Encryption by = encryption == null ? Encryption.STARTTLS : encryption;
    return new MailServer(
        KeyValues.required("host", host),
        port == null ? by.usualPort : port,
        by,
        Person.address("from", KeyValues.required("from", from)),
        account(folder),
        issuers("caFile", KeyValues.file("caFile", caFile, folder)));
  }

  private @Nullable Account account(Path folder) {
    if (user == null && passwordFile == null) {
      return null;
    }
    if (user == null || passwordFile == null) {
      throw new BadInput(
          user == null ? "user" : "passwordFile",
          "",
          "is missing",
          "user and passwordFile together");
    }
    return new Account(
        KeyValues.oneLine("user", user), SecretFile.named("passwordFile", passwordFile, folder));
  }

  /** The file, which is read once, so that a fault shows at once. */
  static @Nullable Path issuers(String key, @Nullable Path file) {
    if (file != null) {
      Object unused = IssuerFile.trusting(key, file);
    }
    return file;
  }
}
