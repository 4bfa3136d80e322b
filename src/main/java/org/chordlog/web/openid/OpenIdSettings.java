package org.chordlog.web.openid;

import java.net.InetAddress;
import java.net.URI;
import java.net.URISyntaxException;
import java.net.UnknownHostException;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import javax.net.ssl.SSLContext;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Check;
import org.chordlog.trust.SecretFile;
import org.jspecify.annotations.Nullable;

/**
 * A provider of OpenID Connect at which people sign in. {@code name} is what the button says;
 * {@code client} is what this service proves itself by; {@code groupsClaim} names the claim of the
 * ID token that lists a person's groups; {@code roles} are the roles of each group, by name.
 */
public record OpenIdSettings(
    Place place, String name, Client client, String groupsClaim, Map<String, Set<String>> roles) {
  /** The provider's address, and the issuers of its certificate; null for those that Java knows. */
  public record Place(URI issuer, @Nullable SSLContext trust) {
    public Place {
      requireEncrypted(issuer);
    }
  }

  /** As the provider knows this service; {@code scope} is what it asks for. */
  public record Client(String id, SecretFile secret, String scope) {
    public Client {
      Check.text("clientId", id);
      if (!List.of(scope.split(" ", -1)).contains("openid")) {
        throw new BadInput("scope", scope, "does not hold openid", "openid profile groups");
      }
    }
  }

  public OpenIdSettings {
    Check.text("name", name);
    Check.text("groupsClaim", groupsClaim);
    if (roles.isEmpty()) {
      throw new BadInput("roles", "", "is missing", "a group and its roles, as benders: operator");
    }
    roles = Map.copyOf(roles);
  }

  /** The provider's word and this service's secret travel there. */
  private static void requireEncrypted(URI issuer) {
    boolean https = "https".equals(issuer.getScheme());
    boolean here = "http".equals(issuer.getScheme()) && isThisComputer(issuer);
    if (issuer.getHost() == null || issuer.getQuery() != null || !(https || here)) {
      throw new BadInput(
          "issuer", issuer, "can't be used", "an address that begins with https://, without ?");
    }
  }

  private static boolean isThisComputer(URI issuer) {
    try {
      return InetAddress.getByName(issuer.getHost()).isLoopbackAddress();
    } catch (UnknownHostException e) {
      return false;
    }
  }

  static URI issuer(String text) {
    try {
      return new URI(text);
    } catch (URISyntaxException e) {
      throw new BadInput("issuer", text, "is not an address", "as https://login.example/plant");
    }
  }

  /** Roles of someone in these groups, by name; empty where none has any. */
  public Set<String> roles(Collection<String> groups) {
    Set<String> all = new TreeSet<>();
    groups.forEach(each -> all.addAll(roles.getOrDefault(each, Set.of())));
    return all;
  }
}
