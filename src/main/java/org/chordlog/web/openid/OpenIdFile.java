package org.chordlog.web.openid;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import javax.net.ssl.SSLContext;
import org.chordlog.account.Role;
import org.chordlog.file.FileTrouble;
import org.chordlog.measure.BadInput;
import org.chordlog.trust.IssuerFile;
import org.chordlog.trust.SecretFile;
import org.chordlog.yaml.FieldBinder;
import org.chordlog.yaml.YamlFaults;
import org.chordlog.yaml.YamlPlaces;
import org.jspecify.annotations.Nullable;

/** The settings of a provider in a YAML file; files that it names are beside it. */
final class OpenIdFile {
  private static final String OPTION = "--openid";
  private static final String KIND = "a file of a provider; see the help on signing in";
  private static final String SECRET = "clientSecretFile";
  private static final String ISSUERS = "trustedCertificates";
  private static final int MOST_BYTES = 65_536;
  private static final Set<String> KEYS =
      Set.of("issuer", "name", "clientId", SECRET, ISSUERS, "groupsClaim", "scope", "roles");

  private final JsonNode root;
  private final Path folder;

  private OpenIdFile(JsonNode root, Path folder) {
    this.root = root;
    this.folder = folder;
  }

  /** {@link BadInput} by the key that is wrong, with its place. */
  static OpenIdSettings read(Path file) {
    String yaml = content(file);
    JsonNode root = tree(yaml, file);
    Path folder = Objects.requireNonNull(file.toAbsolutePath().getParent());
    try {
      return new OpenIdFile(root, folder).settings();
    } catch (BadInput e) {
      throw YamlPlaces.placed(e, yaml, file);
    }
  }

  private static String content(Path file) {
    try {
      if (Files.size(file) <= MOST_BYTES) {
        return Files.readString(file);
      }
    } catch (IOException e) {
      throw new BadInput(OPTION, file, FileTrouble.reading(file, e), KIND);
    }
    throw new BadInput(OPTION, file, "is too large", "at most " + MOST_BYTES + " bytes");
  }

  private static JsonNode tree(String yaml, Path file) {
    try {
      JsonNode root = FieldBinder.tree(yaml);
      if (root.isObject()) {
        return root;
      }
    } catch (JsonProcessingException e) {
      throw YamlFaults.of(e, OPTION, file.toString(), KIND);
    }
    throw new BadInput(OPTION, file, "holds no keys", KIND);
  }

  private OpenIdSettings settings() {
    root.fieldNames().forEachRemaining(OpenIdFile::requireKnown);
    OpenIdSettings.Client client =
        new OpenIdSettings.Client(
            text("clientId"),
            SecretFile.named(SECRET, text(SECRET), folder),
            text("scope", "openid profile"));
    return new OpenIdSettings(
        new OpenIdSettings.Place(OpenIdSettings.issuer(text("issuer")), trust()),
        text("name"),
        client,
        text("groupsClaim", "groups"),
        roles(root.path("roles")));
  }

  private static void requireKnown(String key) {
    if (!KEYS.contains(key)) {
      throw new BadInput(key, "", "is no such key", String.join(", ", new TreeSet<>(KEYS)));
    }
  }

  private @Nullable SSLContext trust() {
    return root.has(ISSUERS) ? IssuerFile.trusting(ISSUERS, folder.resolve(text(ISSUERS))) : null;
  }

  private String text(String key) {
    JsonNode value = root.path(key);
    boolean written = value.isTextual() || value.isNumber();
    if (!written || value.asText().isBlank()) {
      throw new BadInput(key, value.asText(), "is missing or is not a text", "a text");
    }
    return value.asText().strip();
  }

  private String text(String key, String otherwise) {
    return root.has(key) ? text(key) : otherwise;
  }

  private static Map<String, Set<String>> roles(JsonNode table) {
    Map<String, Set<String>> roles = new LinkedHashMap<>();
    table.properties().forEach(row -> roles.put(row.getKey(), names(row.getValue())));
    return roles;
  }

  private static Set<String> names(JsonNode value) {
    Set<String> names = new TreeSet<>();
    if (value.isTextual()) {
      names.add(value.asText());
    }
    value.elements().forEachRemaining(each -> names.add(each.asText()));
    return Role.known(names);
  }
}
