"""What is kept beside a job: marks that stay, once each, with their history."""

import sqlite3
import stat
from collections.abc import Iterator
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

import pytest

from cli.failures import Failure
from cli.serving.links import Link, kept_bases, local_name, printed_link
from cli.serving.store import PRAGMAS, Store, open_store, store_file
from jigs.bench.kept import Kept

ROOT = Path(__file__).parents[3]


@pytest.fixture
def job(tmp_path: Path) -> Path:
    return tmp_path / "job.toml"


@pytest.fixture
def store(job: Path) -> Iterator[Store]:
    with open_store(job) as opened:
        yield opened


def test_marks_notes_and_photos_stay(job: Path) -> None:
    """What was kept is there when the file is opened again."""
    with open_store(job) as store:
        store.saw({"B1-2": "7K4F"})
        store.mark("B1-2", "arrived", "7K4F")
        store.mark("B1-2", "bored-cups", "7K4F")
        store.note("B1-2", "dent at the lower edge", "7K4F")
        store.keep_photo("B1-2", b"jpeg", "7K4F")
    with open_store(job) as store:
        kept = store.kept()["B1-2"]
        assert [*kept.marks.items()] == [("arrived", "7K4F"), ("bored-cups", "7K4F")]
        assert (kept.note, kept.codes) == ("dent at the lower edge", ("7K4F",))
        assert kept.photo
        assert store.photo("B1-2") == b"jpeg"


def test_the_same_step_twice_is_one_mark(store: Store) -> None:
    """A phone that asks again because the answer was lost marks nothing twice, undoes nothing
    twice: the history has each deed once."""
    for _ in range(2):
        store.mark("B1-2", "arrived", "7K4F")
    for _ in range(2):
        store.undo("B1-2", "arrived", "7K4F")
    for _ in range(2):
        store.note("B1-2", "dent", "7K4F")
    assert [entry.deed for entry in store.history("B1-2")] == ["done", "undone", "note"]
    assert store.kept()["B1-2"] == Kept(note="dent")


def test_undoing_takes_one_step_back(store: Store) -> None:
    """The others stay, in the order in which they were marked."""
    for step in ("arrived", "bored-cups", "hung"):
        store.mark("B1-2", step, "7K4F")
    store.undo("B1-2", "bored-cups", "7K4F")
    assert [*store.kept()["B1-2"].marks] == ["arrived", "hung"]


def test_a_photo_replaces_the_one_before(store: Store) -> None:
    """One a part; taken away it is gone, and taken away twice it is gone once."""
    store.keep_photo("B1-2", b"one", "")
    first = store.kept()["B1-2"].photo
    store.keep_photo("B1-2", b"two", "")
    assert store.photo("B1-2") == b"two"
    assert store.kept()["B1-2"].photo not in ("", first)
    for _ in range(2):
        store.keep_photo("B1-2", None, "")
    assert (store.photo("B1-2"), store.kept()["B1-2"].photo) == (None, "")
    assert [entry.deed for entry in store.history()] == ["photo", "photo", "no-photo"]


def test_codes_are_told_as_they_change(store: Store) -> None:
    """A code seen again is the latest; a part that is held back has none and loses none."""
    for code in ("7K4F", "7K4F", "Q8RD", "", "7K4F"):
        store.saw({"B1-2": code})
    assert store.kept()["B1-2"].codes == ("Q8RD", "7K4F")
    assert [(entry.deed, entry.said, entry.code) for entry in store.history("B1-2")] == [
        ("recoded", "7K4F", "Q8RD"), ("recoded", "Q8RD", "7K4F"),
    ]  # fmt: skip


def test_another_program_that_marks_is_seen(job: Path, store: Store) -> None:
    """Two servers of one job lose nothing to each other."""
    store.mark("B1-2", "arrived", "")
    with open_store(job) as other:
        other.mark("B1-1", "arrived", "")
    assert [*store.kept()] == ["B1-2", "B1-1"]


def test_two_programs_that_write_at_once_wait_for_each_other(job: Path, store: Store) -> None:
    """Neither is told that the file is locked, and every mark is there, once."""
    with open_store(job) as other:

        def mark(which: Store, number: int) -> None:
            which.mark(f"B{number % 9}", f"step-{number}", "")

        with ThreadPoolExecutor(8) as pool:
            for each in [
                pool.submit(mark, which, number)
                for number in range(100)
                for which in (store, other)
            ]:
                each.result(timeout=20)
        for which in (store, other):
            assert sum(len(kept.marks) for kept in which.kept().values()) == 100
        assert len(store.history()) == 100


def test_the_database_is_set_so_that_a_mark_is_on_the_disk(job: Path, store: Store) -> None:
    """A killed process loses nothing whatever is set; a fallen power line does."""
    for name, value in PRAGMAS.items():
        assert store._one(f"pragma {name}") == value
    assert store._base.isolation_level is None
    assert PRAGMAS["journal_mode"] == "wal"
    assert PRAGMAS["synchronous"] == 2
    assert store._one("pragma integrity_check") == "ok"


def test_a_change_that_fails_leaves_nothing_and_locks_nothing(job: Path, store: Store) -> None:
    """Neither the mark nor its history is there by half."""
    store._base.execute(
        "create trigger t before insert on history begin select raise(fail, 'full'); end"
    )
    with pytest.raises(sqlite3.IntegrityError):
        store.mark("B1-2", "arrived", "")
    assert store._one("select count(*) from marks") == 0
    store._base.execute("drop trigger t")
    store.mark("B1-2", "arrived", "")
    assert [*store.kept()["B1-2"].marks] == ["arrived"]


def test_closed_it_is_one_file_for_nobody_else(job: Path) -> None:
    """The log is folded in, so that a copy of the file is whole; the key in it is a secret."""
    with open_store(job) as store:
        store.mark("B1-2", "arrived", "")
        assert Path(f"{store_file(job)}-wal").exists()
    assert [path.name for path in job.parent.iterdir()] == ["job.toml.marks.sqlite"]
    assert stat.S_IMODE(store_file(job).stat().st_mode) == 0o600


def test_what_is_no_file_of_marks_is_left_alone(job: Path) -> None:
    """Neither another program's database nor a text is written into."""
    with sqlite3.connect(store_file(job)) as other:
        other.execute("create table tunes (name)")
    other.close()
    for _ in range(2):
        before = store_file(job).read_bytes()
        with pytest.raises(Failure, match=r"job\.toml\.marks\.sqlite"), open_store(job):
            pass
        assert store_file(job).read_bytes() == before
        store_file(job).write_text("once upon a time there was a kitchen\n" * 99, encoding="utf-8")
    store_file(job).unlink()
    with open_store(job) as store:
        store._base.execute("pragma user_version = 99")
    with pytest.raises(Failure, match="another version"), open_store(job):
        pass


def test_a_place_that_cannot_be_written_is_told(tmp_path: Path) -> None:
    """No folder, no marks."""
    with pytest.raises(Failure, match="no such folder"), open_store(tmp_path / "away" / "job.toml"):
        pass


def test_links_stay_from_one_start_to_the_next(job: Path) -> None:
    """Key, port and name are kept; a job that is renamed keeps what its labels say."""
    first = printed_link(job, "Ferry-house galley")
    assert first.base == "http://jig-ferryhouse.local:8032"
    assert len(first.key) == 12
    assert printed_link(job, "Another name") == first
    assert printed_link(job, "", "http://192.168.7.20:9000/") == Link(
        "http://192.168.7.20:9000", first.key
    )
    with open_store(job) as store:
        store.keep_fact("port", "9001")
    assert printed_link(job, "").base.endswith(":9001")


@pytest.mark.parametrize(
    ("base", "kept"),
    [
        ("http://Bench:80/", "http://bench"),
        ("https://kitchen.example:443", "https://kitchen.example"),
        ("https://kitchen.example:80", "https://kitchen.example:80"),
        ("http://[fe80::1]:80", "http://[fe80::1]"),
    ],
)
def test_an_address_is_kept_as_a_browser_says_it(base: str, kept: str, job: Path) -> None:
    """Without the port that is the usual one (RFC 9110, 4.2.1 and 4.2.2, from memory)."""
    assert printed_link(job, "", base).base == base.rstrip("/")
    with open_store(job) as store:
        assert kept_bases(store) == (kept,)


def test_jobs_have_names_and_keys_of_their_own(tmp_path: Path) -> None:
    """Two of them at once would both answer to one name."""
    links = [printed_link(tmp_path / f"{name}.toml", name) for name in ("Küche", "Mill loft", "")]
    assert [link.base.split("/")[-1] for link in links] == [
        "jig-kuche.local:8032", "jig-millloft.local:8032", "jig.local:8032",
    ]  # fmt: skip
    assert len({link.key for link in links}) == 3


def test_a_long_name_stays_a_name_on_the_network(store: Store) -> None:
    """Letters, digits and inner hyphens (RFC 1035, 2.3.1, from memory), and short: it is in each
    symbol."""
    label = local_name(store, "--- Grandmother's scullery behind the boathouse ---")
    assert label == "jig-grandmothe"


def test_one_module_speaks_to_the_database() -> None:
    """Everybody else asks it."""
    users = [
        path.name
        for folder in ("jigs", "templates", "cli")
        for path in (ROOT / folder).rglob("*.py")
        if "sqlite3" in path.read_text(encoding="utf-8")
    ]
    assert users == ["store.py"]
