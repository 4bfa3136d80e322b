package org.chordlog.notify.settings;

import java.net.URI;
import java.net.URISyntaxException;
import java.nio.file.Path;
import java.util.List;
import org.chordlog.measure.BadInput;
import org.chordlog.notify.channel.Webhook;
import org.chordlog.notify.webhook.Signature;
import org.chordlog.trust.SecretFile;
import org.jspecify.annotations.Nullable;

/** A part of {@code webhooks}. */
record WebhookFields(
    @Nullable String name,
    @Nullable String url,
    @Nullable List<String> secretFiles,
    @Nullable String caFile) {
  Webhook webhook(Path folder) {
    List<SecretFile> secrets =
        (secretFiles == null ? List.<String>of() : secretFiles)
            .stream().map(each -> secret(each, folder)).toList();
    return new Webhook(
        KeyValues.required("name", name),
        address(KeyValues.required("url", url)),
        secrets,
        MailFields.issuers("caFile", KeyValues.file("caFile", caFile, folder)));
  }

  private static SecretFile secret(String named, Path folder) {
    SecretFile secret = SecretFile.named("secretFiles", named, folder);
    byte[] unused = Signature.key(secret);
    return secret;
  }

  private static URI address(String url) {
    try {
      return new URI(url);
    } catch (URISyntaxException e) {
      throw new BadInput("url", url, "is not an address", "https://HOST/PATH");
    }
  }
}
