package org.chordlog.web.openid;

import com.nimbusds.jose.JOSEException;
import com.nimbusds.jose.JWSAlgorithm;
import com.nimbusds.jose.jwk.source.JWKSource;
import com.nimbusds.jose.jwk.source.JWKSourceBuilder;
import com.nimbusds.jose.proc.BadJOSEException;
import com.nimbusds.jose.proc.JWSVerificationKeySelector;
import com.nimbusds.jose.proc.SecurityContext;
import com.nimbusds.jwt.JWT;
import com.nimbusds.oauth2.sdk.AuthorizationCode;
import com.nimbusds.oauth2.sdk.AuthorizationCodeGrant;
import com.nimbusds.oauth2.sdk.ParseException;
import com.nimbusds.oauth2.sdk.ResponseType;
import com.nimbusds.oauth2.sdk.Scope;
import com.nimbusds.oauth2.sdk.TokenRequest;
import com.nimbusds.oauth2.sdk.TokenResponse;
import com.nimbusds.oauth2.sdk.auth.ClientAuthentication;
import com.nimbusds.oauth2.sdk.auth.ClientAuthenticationMethod;
import com.nimbusds.oauth2.sdk.auth.ClientSecretBasic;
import com.nimbusds.oauth2.sdk.auth.ClientSecretPost;
import com.nimbusds.oauth2.sdk.auth.Secret;
import com.nimbusds.oauth2.sdk.id.ClientID;
import com.nimbusds.oauth2.sdk.id.Issuer;
import com.nimbusds.oauth2.sdk.pkce.CodeChallengeMethod;
import com.nimbusds.openid.connect.sdk.AuthenticationRequest;
import com.nimbusds.openid.connect.sdk.AuthenticationResponse;
import com.nimbusds.openid.connect.sdk.AuthenticationResponseParser;
import com.nimbusds.openid.connect.sdk.OIDCTokenResponse;
import com.nimbusds.openid.connect.sdk.OIDCTokenResponseParser;
import com.nimbusds.openid.connect.sdk.claims.IDTokenClaimsSet;
import com.nimbusds.openid.connect.sdk.op.OIDCProviderMetadata;
import com.nimbusds.openid.connect.sdk.validators.IDTokenValidator;
import java.io.IOException;
import java.net.MalformedURLException;
import java.net.URI;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.chordlog.web.openid.NotProved.Reason;
import org.jspecify.annotations.Nullable;

/**
 * The provider at which people sign in, by the code flow of OpenID Connect Core 1.0 with PKCE (RFC
 * 7636). It is asked for its addresses when somebody first signs in, and again each day; its keys
 * stay in use for a day while it does not give them. Any thread.
 */
public final class Provider {
  private static final Duration DAY = Duration.ofDays(1);
  private static final Duration KEYS_FRESH = Duration.ofMinutes(5);
  private static final int CLOCK_ERROR_SECONDS = 60;

  /** Signed with a key that only the provider has; never none, nor by the client's own secret. */
  private static final Set<JWSAlgorithm> ALGORITHMS =
      Set.of(
          JWSAlgorithm.RS256,
          JWSAlgorithm.RS384,
          JWSAlgorithm.RS512,
          JWSAlgorithm.PS256,
          JWSAlgorithm.PS384,
          JWSAlgorithm.PS512,
          JWSAlgorithm.ES256,
          JWSAlgorithm.ES384,
          JWSAlgorithm.ES512);

  /** What the provider said of itself, and when. */
  private record Known(OIDCProviderMetadata said, IDTokenValidator validator, long nanos) {}

  /** Who the provider says it is: identified by issuer and subject; the name is for people. */
  public record Claims(String issuer, String subject, String name, List<String> groups) {}

  private final OpenIdSettings settings;
  private final Duration keysFresh;
  private final ProviderFetch fetch;
  private @Nullable Known known;

  Provider(OpenIdSettings settings, Duration keysFresh) {
    this.settings = settings;
    this.keysFresh = keysFresh;
    fetch = new ProviderFetch(settings.place().trust());
  }

  /** {@link org.chordlog.measure.BadInput} where the file can't be used. */
  public static Provider of(Path file) {
    return new Provider(OpenIdFile.read(file), KEYS_FRESH);
  }

  public OpenIdSettings settings() {
    return settings;
  }

  /** Where the browser goes; it comes back to {@code back}. */
  public URI signIn(Attempt attempt, URI back) throws NotProved {
    return new AuthenticationRequest.Builder(ResponseType.CODE, scope(), client(), back)
        .endpointURI(known().said().getAuthorizationEndpointURI())
        .state(attempt.state())
        .nonce(attempt.nonce())
        .codeChallenge(attempt.verifier(), CodeChallengeMethod.S256)
        .build()
        .toURI();
  }

  private Scope scope() {
    return Scope.parse(settings.client().scope());
  }

  private ClientID client() {
    return new ClientID(settings.client().id());
  }

  /** Who signed in, by the query that the browser brought back. */
  public Claims proved(Attempt attempt, URI back, Map<String, List<String>> brought)
      throws NotProved {
    AuthorizationCode code = code(attempt, parsed(back, brought));
    Known now = known();
    JWT token = token(now, attempt, back, code);
    try {
      return claims(now.validator().validate(token, attempt.nonce()));
    } catch (BadJOSEException e) {
      throw new NotProved(Reason.UNPROVED, "the ID token is not good", e);
    } catch (JOSEException e) {
      throw new NotProved(Reason.UNPROVED, "the ID token can't be checked", e);
    }
  }

  private AuthorizationCode code(Attempt attempt, AuthenticationResponse answer) throws NotProved {
    if (!attempt.state().equals(answer.getState())) {
      throw new NotProved(Reason.STALE, "the state is not of this browser's attempt");
    }
    Issuer issuer = answer.getIssuer();
    if (issuer != null && !issuer.getValue().equals(settings.place().issuer().toString())) {
      throw new NotProved(Reason.UNPROVED, "the answer is of another provider (RFC 9207)");
    }
    if (!answer.indicatesSuccess()) {
      String said = String.valueOf(answer.toErrorResponse().getErrorObject().getCode());
      throw new NotProved(Reason.DENIED, "the provider answered " + said);
    }
    return Objects.requireNonNull(answer.toSuccessResponse().getAuthorizationCode());
  }

  private static AuthenticationResponse parsed(URI back, Map<String, List<String>> brought)
      throws NotProved {
    try {
      AuthenticationResponse answer = AuthenticationResponseParser.parse(back, brought);
      if (answer.indicatesSuccess() && answer.toSuccessResponse().getAuthorizationCode() == null) {
        throw new NotProved(Reason.UNPROVED, "the answer has no code");
      }
      return answer;
    } catch (ParseException e) {
      throw new NotProved(Reason.UNPROVED, "the answer is of another form", e);
    }
  }

  private JWT token(Known now, Attempt attempt, URI back, AuthorizationCode code) throws NotProved {
    var grant = new AuthorizationCodeGrant(code, back, attempt.verifier());
    var asked =
        new TokenRequest.Builder(now.said().getTokenEndpointURI(), proof(now.said()), grant)
            .build();
    try {
      TokenResponse answer = OIDCTokenResponseParser.parse(asked.toHTTPRequest().send(fetch));
      if (!answer.indicatesSuccess()) {
        String said = String.valueOf(answer.toErrorResponse().getErrorObject().getCode());
        throw new NotProved(Reason.DENIED, "the provider refused the code: " + said);
      }
      if (answer.toSuccessResponse() instanceof OIDCTokenResponse given
          && given.getOIDCTokens().getIDToken() != null) {
        return given.getOIDCTokens().getIDToken();
      }
      throw new NotProved(Reason.UNPROVED, "the provider gave no ID token");
    } catch (ParseException e) {
      throw new NotProved(Reason.UNPROVED, "the provider's token is of another form", e);
    } catch (IOException e) {
      throw new NotProved(Reason.AWAY, "the provider gave no token", e);
    }
  }

  /** In the header, unless the provider takes the secret in the body only. */
  private ClientAuthentication proof(OIDCProviderMetadata said) {
    Secret secret = new Secret(settings.client().secret().read());
    List<ClientAuthenticationMethod> taken = said.getTokenEndpointAuthMethods();
    boolean inBody =
        taken != null
            && !taken.contains(ClientAuthenticationMethod.CLIENT_SECRET_BASIC)
            && taken.contains(ClientAuthenticationMethod.CLIENT_SECRET_POST);
    return inBody
        ? new ClientSecretPost(client(), secret)
        : new ClientSecretBasic(client(), secret);
  }

  private Claims claims(IDTokenClaimsSet said) {
    String name = said.getStringClaim("name");
    String shown = name == null ? said.getStringClaim("preferred_username") : name;
    List<String> groups = said.getStringListClaim(settings.groupsClaim());
    String subject = said.getSubject().getValue();
    return new Claims(
        said.getIssuer().getValue(),
        subject,
        shown == null ? subject : shown,
        groups == null ? List.of() : groups);
  }

  private synchronized Known known() throws NotProved {
    if (known == null || System.nanoTime() - known.nanos() > DAY.toNanos()) {
      known = asked();
    }
    return known;
  }

  private Known asked() throws NotProved {
    String issuer = settings.place().issuer().toString();
    String at = issuer.replaceFirst("/$", "") + "/.well-known/openid-configuration";
    try {
      OIDCProviderMetadata said = fetch.get(URI.create(at), OIDCProviderMetadata::parse);
      if (!said.getIssuer().getValue().equals(issuer)) {
        throw new NotProved(Reason.UNPROVED, at + " names another issuer: " + said.getIssuer());
      }
      if (said.getAuthorizationEndpointURI() == null || said.getTokenEndpointURI() == null) {
        throw new NotProved(Reason.UNPROVED, at + " has no address for codes or tokens");
      }
      return new Known(said, validator(said), System.nanoTime());
    } catch (IOException e) {
      throw new NotProved(Reason.AWAY, "the provider was not reached", e);
    }
  }

  private IDTokenValidator validator(OIDCProviderMetadata said) throws MalformedURLException {
    JWKSource<SecurityContext> keys =
        JWKSourceBuilder.<SecurityContext>create(said.getJWKSetURI().toURL(), fetch)
            .refreshAheadCache(false)
            .cache(keysFresh.toMillis(), Duration.ofSeconds(10).toMillis())
            .rateLimited(Duration.ofSeconds(1).toMillis())
            .outageTolerant(DAY.toMillis())
            .build();
    IDTokenValidator made =
        new IDTokenValidator(
            said.getIssuer(), client(), new JWSVerificationKeySelector<>(ALGORITHMS, keys), null);
    made.setMaxClockSkew(CLOCK_ERROR_SECONDS);
    return made;
  }
}
