"""The name on the network: said on loopback alone here, and asked for by a second speaker."""

import errno
import time

import pytest
from zeroconf import Zeroconf

from cli.serving.localname import KIND, said_on_network

LOOPBACK = ["127.0.0.1"]


@pytest.mark.slow
def test_the_name_is_found_while_the_pages_are_served(capfd: pytest.CaptureFixture[str]) -> None:
    """It leads to the address and the port; afterwards it is taken back."""
    name = "jigsheet-test-galley"
    with said_on_network(name, 8032, ["192.0.2.7"], LOOPBACK) as said:
        assert said.wait(timeout=10)
        asker = Zeroconf(interfaces=LOOPBACK)
        found = asker.get_service_info(KIND, f"{name}.{KIND}", timeout=3000)
        asker.close()
    assert found is not None
    assert f"{name}.local" in capfd.readouterr().err
    assert (found.server, found.port) == (f"{name}.local.", 8032)
    assert found.parsed_addresses() == ["192.0.2.7"]


@pytest.mark.parametrize("number", [errno.ENODEV, errno.EADDRINUSE])
def test_without_it_the_pages_are_served_all_the_same(
    number: int, monkeypatch: pytest.MonkeyPatch, capfd: pytest.CaptureFixture[str]
) -> None:
    """No network, or another program that answers for all names: one line, and on."""

    def refuse(**_: object) -> None:
        raise OSError(number, "refused")

    monkeypatch.setattr("zeroconf.Zeroconf", refuse)
    with said_on_network("jigsheet", 8032, ["192.0.2.7"]) as said:
        time.sleep(0.1)
        assert not said.is_set()
    told = capfd.readouterr().err
    assert "jigsheet.local cannot be used" in told
    assert "in figures can" in told
    assert "Traceback" not in told
