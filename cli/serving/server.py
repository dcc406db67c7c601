"""The server: what it takes from strangers, and where it listens.

As it comes it takes bodies of a gigabyte, and a hundred half-open connections shut everybody out
for two minutes.
"""

import socket
import sys
from typing import TYPE_CHECKING, Any

from cli.failures import Failure
from cli.serving.site import MOST_BYTES
from cli.terminal import why

if TYPE_CHECKING:
    from wsgiref.types import WSGIApplication

    from waitress.server import BaseWSGIServer, MultiSocketServer

SETTINGS: dict[str, Any] = {
    "threads": 8,
    "ident": None,
    "max_request_body_size": MOST_BYTES,
    "max_request_header_size": 16_384,
    "connection_limit": 400,
    "channel_timeout": 10,
    "cleanup_interval": 5,
}
"""Bodies are collected outside the threads, so that slow ones keep nobody waiting; 399 half-open
connections cost one wait of ten seconds (measured)."""
ELSEWHERE = ("192.0.2.1", 9)
"""An address that is nobody's (RFC 5737): nothing is sent there."""


def take_port(port: int, *, lan: bool) -> socket.socket:
    """Take a port, on this computer alone or on its network too; 0 is any free one. Raises
    Failure."""
    taken = socket.socket(socket.AF_INET, socket.SOCK_STREAM)
    try:
        if sys.platform != "win32":  # there it would let two programs have one port
            taken.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
        taken.bind(("0.0.0.0" if lan else "127.0.0.1", port))
        taken.listen()
    except OSError as error:
        taken.close()
        raise Failure(
            f"Port {port} cannot be used: {why(error)}. Is another 'serve' running? End it, or "
            "give another --port; links that are printed already lead to the old one."
        ) from error
    return taken


def server_of(
    site: "WSGIApplication", taken: socket.socket
) -> "BaseWSGIServer | MultiSocketServer":
    """Give the server that answers there; its `run` ends with Ctrl-C."""
    import logging

    from waitress.server import create_server

    logging.getLogger("waitress.queue").setLevel(logging.ERROR)  # eight phones at once are no fault
    return create_server(site, sockets=[taken], **SETTINGS)


def network_address() -> str:
    """Give this computer's address on its network, "" without one. Nothing is sent."""
    with socket.socket(socket.AF_INET, socket.SOCK_DGRAM) as probe:
        try:
            probe.connect(ELSEWHERE)
        except OSError:
            return ""
        found = str(probe.getsockname()[0])
    return "" if found.startswith("127.") else found
