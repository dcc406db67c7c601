"""`jigsheet serve`: the scan pages, on this computer or on its network."""

import signal
import socket
from collections.abc import Sequence
from contextlib import ExitStack
from functools import partial

import click

from cli.failures import Failure
from cli.jobs import Asked
from cli.manners import command
from cli.options import with_job
from cli.output import write_text
from cli.terminal import draw, tell

ALONE = "Only this computer sees the pages; --lan lets the telephones of its network in."
NO_NETWORK = "No network is up: only this computer sees the pages."


@command(
    ("At this computer, to try", "serve kitchen.toml"),
    ("For the phones in the shop", "serve kitchen.toml --lan"),
)
@with_job
@click.option(
    "--port",
    type=click.IntRange(0, 65535),
    metavar="N",
    help="Where to listen; printed links lead there, so it is kept with the marks. 0: any free "
    "port, this once.  [default: 8032, or the one kept]",
)
@click.option("--lan", is_flag=True, help="Let the telephones of this network in, by the key.")
@click.option("--open-reading", is_flag=True, help="Let everybody read; marking needs the key.")
@click.option(
    "--new-key", is_flag=True, help="Make a new key: links and labels with the old one end."
)
def serve(asked: Asked, port: int | None, lan: bool, open_reading: bool, new_key: bool) -> None:
    """Serve a page for every part of JOB, to be marked off.

    It says where the part goes and what is next. Marks, notes and photos are kept beside JOB; edit
    JOB meanwhile, the pages follow. Without --lan only this computer sees them. Ctrl-C ends it.
    """
    from cli.serving.access import Gate
    from cli.serving.answers import Answers
    from cli.serving.current import Current
    from cli.serving.links import Link, kept_bases, kept_port, local_name
    from cli.serving.localname import said_on_network
    from cli.serving.server import network_address, server_of, take_port
    from cli.serving.site import make_site
    from cli.serving.store import open_store
    from jigs.reading.stream import is_stream

    if is_stream(asked.path):
        raise Failure(
            f"'{asked.path}' is a stream: what is marked has no place beside it. Name a file."
        )
    layout = asked.lay_out()
    with ExitStack() as end:
        store = end.enter_context(open_store(asked.path))
        current = Current(asked, store, layout)
        taken = end.enter_context(take_port(kept_port(store) if port is None else port, lan=lan))
        listens = int(taken.getsockname()[1])
        if port:
            store.keep_fact("port", str(port))
        if new_key:
            store.renew_key()
        name, figures = local_name(store, layout.job.name), network_address() if lan else ""
        site = make_site(
            Answers(current, store),
            Gate(
                key=store.key, port=listens, lan=lan, open_reading=open_reading,
                names=(f"{name}.local", socket.gethostname(), f"{socket.gethostname()}.local"),
                bases=partial(kept_bases, store),
            ),
        )  # fmt: skip
        server = server_of(site, taken)
        end.callback(server.close)
        # A shell has what a script starts in the background ignore it.
        signal.signal(signal.SIGINT, signal.default_int_handler)
        home = Link(f"http://127.0.0.1:{listens}", store.key).home
        if figures:
            _show([Link(f"http://{figures}:{listens}", store.key).home, home])
            end.enter_context(said_on_network(name, listens, [figures]))
        else:
            write_text("-", f"{home}\n", sources=())
            tell(NO_NETWORK if lan else ALONE)
        tell("Ctrl-C ends it.")
        server.run()
    tell("Ended; everything that was marked is kept.")


def _show(links: Sequence[str]) -> None:
    """Say the addresses, and draw the symbol of the first, that of the network, where it can be
    scanned. One of this computer alone would lead a telephone to itself."""
    from cli.serving.shown import may_show, symbol_lines

    write_text("-", "".join(f"{link}\n" for link in links), sources=())
    if may_show():
        draw(symbol_lines(links[0]))
