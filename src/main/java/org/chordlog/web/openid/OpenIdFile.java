package org.chordlog.web.openid;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.dataformat.yaml.YAMLFactory;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermission;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.chordlog.account.Role;
import org.chordlog.measure.BadInput;

/** The settings of a provider in a YAML file, and the client's secret in a file of its own. */
final class OpenIdFile {
  static final String OPTION = "--openid";
  private static final int MOST_BYTES = 65_536;
  private static final Set<String> KEYS =
      Set.of("issuer", "name", "clientId", "clientSecretFile", "groupsClaim", "scope", "roles");
  private static final ObjectMapper YAML =
      new ObjectMapper(
          YAMLFactory.builder().enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION).build());

  private OpenIdFile() {}

  /** {@link BadInput} by the key that is wrong. */
  static OpenIdSettings read(Path file) {
    JsonNode root = tree(file);
    root.fieldNames().forEachRemaining(OpenIdFile::requireKnown);
    Path secret = file.resolveSibling(text(root, "clientSecretFile"));
    return new OpenIdSettings(
        OpenIdSettings.issuer(text(root, "issuer")),
        text(root, "name"),
        new OpenIdSettings.Client(
            text(root, "clientId"), secret(secret), text(root, "scope", "openid profile")),
        text(root, "groupsClaim", "groups"),
        roles(root.path("roles")));
  }

  private static JsonNode tree(Path file) {
    try {
      JsonNode root = YAML.readTree(content(OPTION, file));
      if (root.isObject()) {
        return root;
      }
    } catch (JsonProcessingException e) {
      // said below
    }
    throw new BadInput(OPTION, file, "is not YAML with keys and values", "keys " + keys());
  }

  private static String keys() {
    return String.join(", ", new TreeSet<>(KEYS));
  }

  private static void requireKnown(String key) {
    if (!KEYS.contains(key)) {
      throw new BadInput(key, "", "is no key of the file of " + OPTION, keys());
    }
  }

  private static String content(String setting, Path file) {
    try {
      if (Files.size(file) <= MOST_BYTES) {
        return Files.readString(file);
      }
    } catch (IOException e) {
      throw new BadInput(setting, file, "can't be read", "a text file that this user may read");
    }
    throw new BadInput(setting, file, "is too large", "at most " + MOST_BYTES + " bytes");
  }

  private static String text(JsonNode root, String key) {
    JsonNode value = root.path(key);
    if (!value.isTextual() || value.asText().isBlank()) {
      throw new BadInput(key, value.asText(), "is missing or is not a text", "a text");
    }
    return value.asText().strip();
  }

  private static String text(JsonNode root, String key, String otherwise) {
    return root.has(key) ? text(root, key) : otherwise;
  }

  private static String secret(Path file) {
    String secret = content("clientSecretFile", file).strip();
    try {
      if (Files.getPosixFilePermissions(file).contains(PosixFilePermission.OTHERS_READ)) {
        throw new BadInput(
            "clientSecretFile", file, "can be read by everybody", "chmod o-rwx " + file);
      }
    } catch (UnsupportedOperationException | IOException e) {
      return secret; // a file system without permissions
    }
    return secret;
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
