"""This computer's name on the network, said there while the pages are served (multicast DNS, RFC
6762): a printed link with a name leads here even when the figures of the address have changed."""

import threading
from collections.abc import Iterator, Sequence
from contextlib import contextmanager, suppress

from cli.terminal import tell, why

KIND = "_http._tcp.local."


@contextmanager
def said_on_network(
    name: str, port: int, addresses: Sequence[str], interfaces: Sequence[str] | None = None
) -> Iterator[threading.Event]:
    """Say for so long that `name`, with `.local` behind it, is this computer; the event tells that
    it was said. Where it cannot be said, the pages are served all the same.

    It takes two seconds, so it is done beside the serving.
    """
    said, end = threading.Event(), threading.Event()
    thread = threading.Thread(
        target=_say, args=(name, port, addresses, interfaces, said, end), daemon=True
    )
    thread.start()
    try:
        yield said
    finally:
        end.set()
        thread.join(timeout=5.0)


def _say(
    name: str,
    port: int,
    addresses: Sequence[str],
    interfaces: Sequence[str] | None,
    said: threading.Event,
    end: threading.Event,
) -> None:
    from zeroconf import Error, InterfaceChoice, ServiceInfo, Zeroconf

    try:
        network = Zeroconf(interfaces=interfaces or InterfaceChoice.Default)
    except OSError as error:  # no network, or another program answers for all names here
        tell(f"The name {name}.local cannot be used: {why(error)}. The address in figures can.")
        return
    try:
        network.register_service(
            ServiceInfo(
                KIND,
                f"{name}.{KIND}",
                port=port,
                server=f"{name}.local.",
                parsed_addresses=list(addresses),
            ),
            allow_name_change=True,
        )
        said.set()
        tell(f"On this network it is called {name}.local, where telephones know such names.")
        end.wait()
    except (OSError, Error) as error:
        tell(f"The name {name}.local cannot be used: {error}. The address in figures can.")
    finally:
        with suppress(OSError, Error):
            network.close()
