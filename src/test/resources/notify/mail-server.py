"""A mail server for tests, by aiosmtpd: prints its port, and writes each mail that it takes to a folder.

Arguments: address, how it behaves, folder, certificate, key.
"""
import asyncio
import os
import ssl
import sys

from aiosmtpd.smtp import SMTP, AuthResult

ADDRESS, BEHAVIOUR, FOLDER, CERTIFICATE, KEY = sys.argv[1:6]


class Taking:
    """Takes every mail, or answers as it was told to."""

    taken = 0

    async def handle_RCPT(self, server, session, envelope, address, options):
        if BEHAVIOUR == "550":
            return "550 5.1.1 no such mailbox"
        envelope.rcpt_tos.append(address)
        return "250 OK"

    async def handle_DATA(self, server, session, envelope):
        if BEHAVIOUR == "451":
            return "451 4.3.0 try again later"
        Taking.taken += 1
        name = os.path.join(FOLDER, "%04d.eml" % Taking.taken)
        with open(name + ".part", "wb") as out:
            out.write(envelope.content)
        os.rename(name + ".part", name)
        if BEHAVIOUR == "silent-after-data":
            await asyncio.sleep(3600)
        return "250 OK"


class Closing(SMTP):
    """Hangs up in the middle of a mail."""

    async def smtp_DATA(self, arg):
        await self.push("354 go on")
        await self._reader.readline()
        self.transport.abort()


class Silent(asyncio.Protocol):
    """Accepts a connection and says nothing."""


def signed_in(server, session, envelope, mechanism, data):
    good = data.login == b"chordlog" and data.password == b"a long secret"
    return AuthResult(success=good, handled=good)


def protocol():
    if BEHAVIOUR == "silent":
        return Silent()
    context = None
    if BEHAVIOUR != "plain":
        context = ssl.create_default_context(ssl.Purpose.CLIENT_AUTH)
        context.load_cert_chain(CERTIFICATE, KEY)
    kind = Closing if BEHAVIOUR == "closing" else SMTP
    return kind(
        Taking(),
        tls_context=context,
        require_starttls=context is not None,
        authenticator=signed_in,
        auth_required=BEHAVIOUR == "auth",
        enable_SMTPUTF8=True,
    )


async def main():
    server = await asyncio.get_running_loop().create_server(protocol, ADDRESS, 0)
    print(server.sockets[0].getsockname()[1], flush=True)
    await server.serve_forever()


asyncio.run(main())
