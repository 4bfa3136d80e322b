package org.chordlog.web.openid;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.Set;
import org.chordlog.measure.BadInput;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class OpenIdFileTest {
  private static final String GOOD =
      """
      issuer: https://login.example/plant
      name: The plant
      clientId: chordlog
      clientSecretFile: secret
      roles:
        benders: operator
        inspection: [quality, gauge-keeper]
      """;

  @TempDir Path folder;

  private OpenIdSettings read(String text) throws IOException {
    Path secret = Files.writeString(folder.resolve("secret"), "hush\n");
    Files.setPosixFilePermissions(secret, PosixFilePermissions.fromString("rw-r-----"));
    return OpenIdFile.read(Files.writeString(folder.resolve("openid.yaml"), text));
  }

  @Test
  void groupsGiveTheirRolesTogether() throws Exception {
    OpenIdSettings settings = read(GOOD);
    assertEquals("groups", settings.groupsClaim());
    assertEquals("hush", settings.client().secret().read());
    assertEquals(
        Set.of("OPERATOR", "QUALITY", "GAUGE_KEEPER"),
        settings.roles(List.of("inspection", "benders", "others")));
    assertEquals(Set.of(), settings.roles(List.of("others")));
    assertFalse(settings.toString().contains("hush"), settings::toString);
  }

  @Test
  void aNameOfDigitsIsTakenAsItWasWritten() throws Exception {
    OpenIdSettings settings = read(GOOD.replace("clientId: chordlog", "clientId: 0123"));
    assertEquals("0123", settings.client().id());
  }

  @ParameterizedTest
  @CsvSource({
    "https://login.example/plant, http://login.example, issuer",
    "https://login.example/plant, https://login.example?a=b, issuer",
    "https://login.example/plant, login, issuer",
    "'name: The plant', '', name",
    "'benders: operator', 'benders: foreman', roles",
    "'roles:', 'rolls:', rolls",
    "'clientSecretFile: secret', 'clientSecretFile: none', clientSecretFile",
    "'name: The plant', 'name: The plant\nscope: groups', scope",
    "'name: The plant', 'name: [', --openid",
  })
  void whatCanNotBeUsedIsRefusedByItsKey(String good, String bad, String field) {
    BadInput refused = assertThrows(BadInput.class, () -> read(GOOD.replace(good, bad)));
    assertEquals(field, refused.faults().get(0).field(), refused::getMessage);
  }

  @Test
  void aSecretThatEverybodyMayReadIsRefused() throws Exception {
    OpenIdSettings unused = read(GOOD);
    Files.setPosixFilePermissions(
        folder.resolve("secret"), PosixFilePermissions.fromString("rw-r--r--"));
    BadInput refused =
        assertThrows(BadInput.class, () -> OpenIdFile.read(folder.resolve("openid.yaml")));
    assertTrue(String.valueOf(refused.getMessage()).contains("chmod 640"), refused::getMessage);
  }
}
