package org.chordlog.web.openid;

import com.nimbusds.jose.JOSEException;
import com.nimbusds.jose.JOSEObjectType;
import com.nimbusds.jose.JWSAlgorithm;
import com.nimbusds.jose.JWSHeader;
import com.nimbusds.jose.JWSSigner;
import com.nimbusds.jose.crypto.MACSigner;
import com.nimbusds.jose.crypto.RSASSASigner;
import com.nimbusds.jose.jwk.JWKSet;
import com.nimbusds.jose.jwk.RSAKey;
import com.nimbusds.jose.jwk.gen.RSAKeyGenerator;
import com.nimbusds.jwt.JWTClaimsSet;
import com.nimbusds.jwt.PlainJWT;
import com.nimbusds.jwt.SignedJWT;
import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.List;
import java.util.UUID;

/** A provider of OpenID Connect over HTTP that lies in one way at a time. */
public final class CrookedProvider implements AutoCloseable {
  public static final String CLIENT = "chordlog";

  /** What it does wrong in its next token. */
  public enum Lie {
    NONE,
    WRONG_NONCE,
    WITHOUT_NONCE,
    UNSIGNED,
    SIGNED_WITH_THE_SECRET_OF_THE_CLIENT,
    SIGNED_WITH_ANOTHER_KEY,
    OTHER_AUDIENCE,
    OTHER_ISSUER,
    OVER_FOR_120_SECONDS,
    OVER_FOR_30_SECONDS,
    MADE_IN_120_SECONDS,
    NO_ID_TOKEN,
    REFUSED_CODE,
    LEADS_ELSEWHERE,
    TOO_LONG,
    NOT_JSON
  }

  private final HttpServer server;
  private final String secret;
  private volatile RSAKey key = newKey();
  private volatile boolean keysAreAway;
  private volatile Lie lie = Lie.NONE;
  private volatile String nonce = "";
  private volatile String asked = "";

  public CrookedProvider(String secret) throws IOException {
    this.secret = secret;
    server = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 8);
    server.createContext("/.well-known/openid-configuration", at -> say(at, 200, metadata()));
    server.createContext("/keys", at -> say(at, keysAreAway ? 503 : 200, keys()));
    server.createContext("/token", this::token);
    server.start();
  }

  private static RSAKey newKey() {
    try {
      return new RSAKeyGenerator(2048).keyID(UUID.randomUUID().toString()).generate();
    } catch (JOSEException e) {
      throw new IllegalStateException(e);
    }
  }

  public URI issuer() {
    return URI.create("http://127.0.0.1:" + server.getAddress().getPort());
  }

  /** For the next token; {@code forNonce}: what the browser was sent with. */
  public void tells(Lie next, String forNonce) {
    lie = next;
    nonce = forNonce;
  }

  public void keysAreAway(boolean away) {
    keysAreAway = away;
  }

  public void renewKey() {
    key = newKey();
  }

  /** Body and proof of the client's last request for a token. */
  public String asked() {
    return asked;
  }

  private String metadata() {
    return """
        {"issuer": "%1$s", "authorization_endpoint": "%1$s/authorize",
         "token_endpoint": "%1$s/token", "jwks_uri": "%1$s/keys",
         "subject_types_supported": ["public"], "response_types_supported": ["code"],
         "id_token_signing_alg_values_supported": ["RS256"]}
        """
        .formatted(issuer());
  }

  private String keys() {
    return new JWKSet(key.toPublicJWK()).toString();
  }

  private void token(HttpExchange at) throws IOException {
    String body = new String(at.getRequestBody().readAllBytes(), StandardCharsets.UTF_8);
    asked = body + " " + at.getRequestHeaders().getFirst("Authorization");
    switch (lie) {
      case REFUSED_CODE -> say(at, 400, "{\"error\": \"invalid_grant\"}");
      case NOT_JSON -> say(at, 200, "<html></html>");
      case TOO_LONG -> say(at, 200, "{\"a\": \"" + "a".repeat(300_000) + "\"}");
      case NO_ID_TOKEN -> say(at, 200, "{\"access_token\": \"a\", \"token_type\": \"Bearer\"}");
      case LEADS_ELSEWHERE -> {
        at.getResponseHeaders().set("Location", issuer() + "/keys");
        say(at, 307, "{}");
      }
      default -> say(at, 200, tokens());
    }
  }

  private String tokens() {
    return "{\"access_token\": \"a\", \"token_type\": \"Bearer\", \"id_token\": \"%s\"}"
        .formatted(idToken());
  }

  private String idToken() {
    try {
      JWTClaimsSet claims = claims();
      return switch (lie) {
        case UNSIGNED -> new PlainJWT(claims).serialize();
        case SIGNED_WITH_THE_SECRET_OF_THE_CLIENT ->
            signed(JWSAlgorithm.HS256, new MACSigner(secret), claims);
        case SIGNED_WITH_ANOTHER_KEY ->
            signed(JWSAlgorithm.RS256, new RSASSASigner(newKey()), claims);
        default -> signed(JWSAlgorithm.RS256, new RSASSASigner(key), claims);
      };
    } catch (JOSEException e) {
      throw new IllegalStateException(e);
    }
  }

  private String signed(JWSAlgorithm algorithm, JWSSigner signer, JWTClaimsSet claims)
      throws JOSEException {
    JWSHeader header =
        new JWSHeader.Builder(algorithm).keyID(key.getKeyID()).type(JOSEObjectType.JWT).build();
    SignedJWT token = new SignedJWT(header, claims);
    token.sign(signer);
    return token.serialize();
  }

  private JWTClaimsSet claims() {
    Instant end =
        Instant.now()
            .plusSeconds(
                switch (lie) {
                  case OVER_FOR_120_SECONDS -> -120;
                  case OVER_FOR_30_SECONDS -> -30;
                  default -> 300;
                });
    Instant made =
        lie == Lie.MADE_IN_120_SECONDS ? Instant.now().plusSeconds(120) : end.minusSeconds(300);
    JWTClaimsSet.Builder claims =
        new JWTClaimsSet.Builder()
            .issuer(lie == Lie.OTHER_ISSUER ? "https://other.example" : issuer().toString())
            .audience(lie == Lie.OTHER_AUDIENCE ? "another" : CLIENT)
            .subject("4711")
            .claim("exp", end.getEpochSecond())
            .claim("iat", made.getEpochSecond())
            .claim("name", "Ann")
            .claim("groups", List.of("benders"));
    return switch (lie) {
      case WITHOUT_NONCE -> claims.build();
      case WRONG_NONCE -> claims.claim("nonce", nonce + "x").build();
      default -> claims.claim("nonce", nonce).build();
    };
  }

  private static void say(HttpExchange at, int status, String body) throws IOException {
    byte[] bytes = body.getBytes(StandardCharsets.UTF_8);
    at.getResponseHeaders().set("Content-Type", "application/json");
    at.sendResponseHeaders(status, bytes.length);
    at.getResponseBody().write(bytes);
    at.close();
  }

  @Override
  public void close() {
    server.stop(0);
  }
}
