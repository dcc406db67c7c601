"""`serve` as a process: its address, its end, what it takes from strangers, and that nothing that
was acknowledged is lost."""

import http.client
import signal
import socket
import sqlite3
import threading
import time
from collections.abc import Iterator
from contextlib import closing, suppress
from pathlib import Path

import pytest

from cli.serving.links import printed_link
from cli.serving.server import SETTINGS, network_address
from cli.serving.site import MOST_BYTES
from cli.serving.store import store_file
from tests.cli.conftest import Run
from tests.served import Server, served

FORM = {"Content-Type": "application/x-www-form-urlencoded"}


@pytest.fixture(scope="module")
def server(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Server]:
    """Give a server of a small job, the same for all that only ask."""
    from tests.cli.conftest import SMALL

    folder = tmp_path_factory.mktemp("served")
    (folder / "small.toml").write_text(SMALL, encoding="utf-8")
    with served(folder, "small.toml", "--port", "0") as opened:
        yield opened


def ask(server: Server, method: str, address: str, body: bytes | None = None) -> tuple[int, bytes]:
    """Ask with the key; give status and answer."""
    connection = http.client.HTTPConnection("127.0.0.1", server.port, timeout=20)
    try:
        connection.request(method, f"{address}?k={server.key}", body, FORM if body else {})
        got = connection.getresponse()
        return got.status, got.read()
    finally:
        connection.close()


def raw(server: Server, request: bytes) -> bytes:
    """Send bytes as they are; give the beginning of the answer."""
    with socket.create_connection(("127.0.0.1", server.port), timeout=20) as line:
        line.sendall(request.replace(b"HOST", f"127.0.0.1:{server.port}".encode()))
        return line.recv(4096)


def test_it_says_its_address_and_answers_there(server: Server) -> None:
    """On this computer alone; the key is in the address and in nothing else that is said."""
    assert server.base == f"http://127.0.0.1:{server.port}"
    assert len(server.key) == 12
    status, page = ask(server, "GET", "/p/B1-2")
    assert status == 200
    assert b"B1-2" in page
    assert server.key.encode() not in page


@pytest.mark.slow
def test_it_ends_with_0_and_what_was_marked_is_in_one_file(small: Path) -> None:
    """Ctrl-C is its usual end, and what a supervisor sends is as good; the key of the links is
    kept, until a new one is asked for."""
    keys = []
    for how, words in ((signal.SIGINT, ()), (signal.SIGTERM, ("--new-key",))):
        with served(small.parent, small.name, "--port", "0", *words) as server:
            assert ask(server, "POST", "/p/B1-2/mark", b"step=arrived")[0] == 303
            code, said = server.end(how)
        assert code == 0
        assert server.key not in said
        assert "--lan" in said
        assert [path.name for path in small.parent.glob("*.sqlite*")] == [store_file(small).name]
        keys.append(server.key)
        assert printed_link(small, "").key == server.key
    assert keys[0] != keys[1]


def test_a_port_that_is_taken_is_told(server: Server, small: Path, run: Run) -> None:
    """With the way out, and the job's links go on leading to the port that they have."""
    result = run("serve", small, "--port", str(server.port))
    assert result.exit_code == 1
    assert f"Port {server.port} cannot be used" in result.stderr
    assert printed_link(small, "").base.endswith(":8032")


def test_a_job_with_faults_is_not_served_and_leaves_nothing(faulty: Path, run: Run) -> None:
    """As for every command."""
    result = run("serve", faulty)
    assert result.exit_code == 1
    assert "hieght" in result.stderr
    assert [path.name for path in faulty.parent.rglob("*.sqlite*")] == []


class Probe(socket.socket):
    """A socket of a computer whose way to others begins at an address, "" for none."""

    at = ""

    def connect(self, address: object) -> None:
        if not self.at:
            raise OSError(101, "Network is unreachable")

    def getsockname(self) -> tuple[str, int]:
        return self.at, 40_000


@pytest.mark.parametrize(
    ("at", "address"), [("192.168.7.20", "192.168.7.20"), ("127.0.0.1", ""), ("", "")]
)
def test_the_networks_address_is_the_one_that_leads_to_others(
    at: str, address: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Nothing is sent to find it; without a network there is none."""
    monkeypatch.setattr("socket.socket", type("At", (Probe,), {"at": at}))
    assert network_address() == address


def test_a_stream_cannot_be_served(run: Run) -> None:
    """It has no place beside it, and is read once."""
    result = run("serve", "/dev/stdin")
    assert result.exit_code == 1
    assert "is a stream" in result.stderr


def test_what_is_said_twice_or_wrongly_is_refused(server: Server) -> None:
    """Two lengths, a negative one, one in words, two hosts, no host, a line broken within."""
    post = b"POST /p/B1-2/mark HTTP/1.1\r\nHost: HOST\r\n"
    for lengths in (b"5\r\nContent-Length: 6", b"-5", b"five"):
        assert b" 400 " in raw(server, post + b"Content-Length: " + lengths + b"\r\n\r\nhello")
    assert b" 403 " in raw(server, b"GET / HTTP/1.1\r\nHost: HOST\r\nHost: evil.example\r\n\r\n")
    assert b" 403 " in raw(server, b"GET / HTTP/1.0\r\n\r\n")
    assert b"evil" not in raw(server, b"GET /%0d%0aSet-Cookie:evil HTTP/1.1\r\nHost: HOST\r\n\r\n")


def test_too_much_is_refused(server: Server) -> None:
    """A body beyond the limit by its length alone, heads too; the answer has no name of a
    program."""
    head = f"POST /p/B1-2/photo HTTP/1.1\r\nHost: HOST\r\nContent-Length: {MOST_BYTES + 1}\r\n\r\n"
    assert b" 413 " in raw(server, head.encode())
    long = b"GET / HTTP/1.1\r\nHost: HOST\r\nX: " + b"x" * 17_000 + b"\r\n\r\n"
    said = raw(server, long)
    assert b" 431 " in said
    assert b"Server:" not in raw(server, b"GET /style.css HTTP/1.1\r\nHost: HOST\r\n\r\n")


def test_too_much_in_pieces_is_refused_too(server: Server) -> None:
    """Where no length is said before, it is counted; what the process holds stays small."""

    def held() -> int:
        status = Path(f"/proc/{server.process.pid}/status").read_text(encoding="ascii")
        return int(status.partition("VmHWM:")[2].split()[0])  # the peak, kB (proc(5))

    before = held()
    piece = b"10000\r\n" + b"x" * 0x10000 + b"\r\n"
    with socket.create_connection(("127.0.0.1", server.port), timeout=20) as line:
        line.sendall(f"POST /p/B1-2/photo HTTP/1.1\r\nHost: 127.0.0.1:{server.port}\r\n"
                     "Transfer-Encoding: chunked\r\n\r\n".encode())  # fmt: skip
        with suppress(OSError):  # it hangs up amid them
            for _ in range(2 * MOST_BYTES // 0x10000):
                line.sendall(piece)
        assert b" 413 " in line.recv(4096)
    assert held() - before < 30_000


def test_the_limits_are_set() -> None:
    """As they come a stranger's gigabyte is taken, and 100 half-open connections shut all out."""
    assert SETTINGS["max_request_body_size"] == 8 * 1024 * 1024
    assert SETTINGS["max_request_header_size"] == 16 * 1024
    assert (SETTINGS["connection_limit"], SETTINGS["channel_timeout"]) == (400, 10)
    assert SETTINGS["cleanup_interval"] == 5
    assert SETTINGS["ident"] is None


@pytest.mark.slow
def test_half_open_connections_shut_nobody_out(server: Server) -> None:
    """150 that say nothing, and 30 slow uploads: a page is there at once."""
    lines = [socket.create_connection(("127.0.0.1", server.port)) for _ in range(180)]
    try:
        for line in lines[:30]:
            line.sendall(f"POST /p/B1-2/photo HTTP/1.1\r\nHost: 127.0.0.1:{server.port}\r\n"
                         "Content-Length: 1000000\r\n\r\nbegun".encode())  # fmt: skip
        begun = time.monotonic()
        assert ask(server, "GET", "/style.css")[0] == 200
        assert time.monotonic() - begun < 2.0
    finally:
        for line in lines:
            line.close()


class Client(threading.Thread):
    """Somebody who marks a step of a part, undoes it, and so on, until nobody answers."""

    def __init__(self, server: Server, part: str, step: str) -> None:
        super().__init__(daemon=True)
        self.server, self.part, self.step = server, part, step
        self.answered = 0
        self.wrong: list[int] = []

    def run(self) -> None:
        line = http.client.HTTPConnection("127.0.0.1", self.server.port, timeout=20)
        with closing(line), suppress(OSError, http.client.HTTPException):
            while not self.wrong:
                verb = ("mark", "undo")[self.answered % 2]
                address = f"/p/{self.part}/{verb}?k={self.server.key}"
                line.request("POST", address, f"step={self.step}", FORM)
                got = line.getresponse()
                got.read()
                if got.status != 303:
                    self.wrong.append(got.status)
                self.answered += 1


@pytest.mark.slow
def test_nothing_acknowledged_is_lost_when_it_is_killed(small: Path) -> None:
    """Eight clients, until the server dies in their midst: whatever was answered is there, and
    nothing is done twice."""
    steps = {
        "B1-1": "arrived", "B1-2": "arrived", "B1-SIDE-L": "cut", "B1-SIDE-R": "cut",
        "B1-BOTTOM": "cut", "B1-BACK": "cut", "B1-NAILER": "cut", "B1-1-BOX": "assembled",
    }  # fmt: skip
    for _ in range(2):
        with served(small.parent, small.name, "--port", "0") as server:
            clients = [Client(server, *each) for each in steps.items()]
            for client in clients:
                client.start()
            until = time.monotonic() + 20
            while sum(each.answered for each in clients) < 500 and time.monotonic() < until:
                time.sleep(0.01)
            server.process.send_signal(signal.SIGKILL)
            server.process.communicate(timeout=20)
        for client in clients:
            client.join(timeout=20)
            assert client.wrong == []
        assert sum(each.answered for each in clients) >= 500
        with closing(sqlite3.connect(store_file(small))) as base, base:
            assert base.execute("pragma integrity_check").fetchone() == ("ok",)
            counts = dict(base.execute("select part, count(*) from history group by part"))
            marked = {part for (part,) in base.execute("select part from marks")}
            base.execute("delete from history")
            base.execute("delete from marks")
        for client in clients:
            # One deed may have been done whose answer did not arrive.
            assert counts[client.part] - client.answered in (0, 1)
            assert (client.part in marked) is bool(counts[client.part] % 2)
