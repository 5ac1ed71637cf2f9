"""Saving: whole or not at all, keeping rights and links; and rescue copies that outlive a crash."""

import errno
import math
import os
import signal
import stat
import subprocess
import sys
import time

import pytest
from support.editing import quay

from wiring.edits.set_plan import set_plan
from wiring.files import store
from wiring.files.encode import encode
from wiring.files.refusals import NotReadable, NotSaved
from wiring.files.rescue import drop_found, drop_rescue, find_rescues, read_rescue, write_rescue
from wiring.files.store import load, save
from wiring.plan.plan import Plan

as_root = pytest.mark.skipif(os.geteuid() == 0, reason="root may write everywhere")


def test_a_saved_plan_is_loaded_again_and_nothing_else_is_left(tmp_path):
    path = tmp_path / "Hafen · quay.underboard"
    save(quay(), path)
    save(quay(), path)
    assert load(path) == quay()
    assert list(tmp_path.iterdir()) == [path]


def test_rights_and_links_survive_a_save(tmp_path):
    real, link = tmp_path / "real.underboard", tmp_path / "link.underboard"
    save(Plan(), real)
    real.chmod(0o640)
    link.symlink_to(real)
    save(quay(), link)
    assert link.is_symlink() and load(real) == quay()
    assert stat.S_IMODE(real.stat().st_mode) == 0o640


def test_a_new_file_has_the_rights_the_user_gives_new_files(tmp_path):
    path = tmp_path / "new.underboard"
    old = os.umask(0o027)
    try:
        save(quay(), path)
    finally:
        os.umask(old)
    assert stat.S_IMODE(path.stat().st_mode) == 0o640


@pytest.mark.parametrize("failing", ["fsync", "replace"])
@pytest.mark.parametrize(
    ("number", "words"),
    [
        (errno.ENOSPC, "the disk is full"),
        (errno.EROFS, "its folder can only be read"),
        (errno.EACCES, "you may not write in its folder"),
        (errno.EIO, "input/output error"),
    ],
)
def test_a_disk_that_fails_leaves_the_old_plan_and_no_scraps(tmp_path, monkeypatch, failing, number, words):
    path = tmp_path / "plan.underboard"
    save(quay(), path)

    def full(*_):
        raise OSError(number, os.strerror(number))

    monkeypatch.setattr(*((os, "fsync") if failing == "fsync" else (store.Path, "replace")), full)
    with pytest.raises(NotSaved, match=f"was not saved, because {words}"):
        save(set_plan(title="Other").apply(quay()), path)
    monkeypatch.undo()
    assert load(path) == quay() and list(tmp_path.iterdir()) == [path]


def test_what_reads_back_differently_is_not_put_in_place(tmp_path, monkeypatch):
    path = tmp_path / "plan.underboard"
    save(quay(), path)
    monkeypatch.setattr(store.Path, "read_bytes", lambda self: b"{}")
    with pytest.raises(NotSaved, match="reads back differently"):
        save(Plan(), path)
    monkeypatch.undo()
    assert load(path) == quay()


@as_root
def test_a_folder_that_can_only_be_read_is_named(tmp_path):
    tmp_path.chmod(0o500)
    try:
        with pytest.raises(NotSaved, match="may not write in its folder"):
            save(quay(), tmp_path / "plan.underboard")
    finally:
        tmp_path.chmod(0o700)


def test_a_file_marked_as_read_only_is_not_written_over(tmp_path):
    path = tmp_path / "quay.underboard"
    save(quay(), path)
    path.chmod(0o444)
    before = path.read_bytes()
    with pytest.raises(NotSaved, match="because it is marked as read only"):
        save(Plan(), path)
    assert path.read_bytes() == before


def test_places_that_cannot_hold_a_plan_are_told(tmp_path):
    with pytest.raises(NotSaved, match="folder does not exist"):
        save(quay(), tmp_path / "none" / "plan.underboard")
    with pytest.raises(NotSaved, match="a folder has that name"):
        save(quay(), tmp_path)
    with pytest.raises(NotReadable, match="no such file"):
        load(tmp_path / "none.underboard")
    with pytest.raises(NotReadable, match="folder"):
        load(tmp_path)


def test_a_device_is_not_read_for_ever(tmp_path):
    if not os.path.exists("/dev/zero"):  # noqa: PTH110 - a device, not a file
        pytest.skip("no such device here")
    with pytest.raises(NotReadable, match="not a file with a plan"):
        load("/dev/zero")


def test_a_plan_that_could_not_be_opened_again_is_not_saved(tmp_path):
    twice = Plan(title="\ud800")
    with pytest.raises(NotSaved):
        save(twice, tmp_path / "plan.underboard")
    with pytest.raises(NotSaved, match="a number without end"):
        save(Plan(board=((math.nan, 0.0),)), tmp_path / "plan.underboard")
    with pytest.raises(NotSaved, match="a number without end"):
        write_rescue(Plan(board=((math.inf, 0.0),)), None, folder=tmp_path)
    assert list(tmp_path.iterdir()) == []


def test_scraps_of_a_killed_save_are_swept_up_and_nothing_else(tmp_path):
    path = tmp_path / "plan.underboard"
    old, young = tmp_path / f".{path.name}.0123456789ab.tmp", tmp_path / f".{path.name}.ba9876543210.tmp"
    others = [tmp_path / f".{path.name}.notes.tmp", tmp_path / ".other.underboard.0123456789ab.tmp"]
    for file in (old, young, *others):
        file.write_text("{")
    for file in (old, *others):
        os.utime(file, (0, 0))
    save(quay(), path)
    assert set(tmp_path.iterdir()) == {path, young, *others}


SAVER = """
import sys
from wiring.edits.set_plan import set_plan
from wiring.files.store import load, save
plan = load(sys.argv[1])
print("ready", flush=True)
while True:
    for title in ("a" * 100, "b" * 10):
        save(set_plan(title=title).apply(plan), sys.argv[1])
"""


def test_killing_the_program_while_it_saves_leaves_a_whole_plan(tmp_path):
    path = tmp_path / "plan.underboard"
    save(quay(), path)
    for delay_sec in (0.011, 0.023, 0.037):
        command = [sys.executable, "-c", SAVER, str(path)]
        with subprocess.Popen(command, stdout=subprocess.PIPE) as saver:
            assert saver.stdout.readline() == b"ready\n"
            time.sleep(delay_sec)
            saver.send_signal(signal.SIGKILL)
        assert load(path).parts == quay().parts


def test_a_rescue_copy_is_found_by_its_plans_path_read_and_dropped(tmp_path):
    folder, path = tmp_path / "state", tmp_path / "plan.underboard"
    write_rescue(Plan(), path, folder=folder)
    write_rescue(quay(), path, folder=folder)
    write_rescue(Plan(title="Never saved"), None, token="a", folder=folder)
    write_rescue(Plan(), None, token="b", folder=folder)
    assert len(find_rescues(folder=folder)) == 3
    (found,) = find_rescues(path, folder=folder)
    assert (read_rescue(found), found.path, found.title) == (quay(), path, quay().title)
    drop_rescue(path, folder=folder)
    assert find_rescues(path, folder=folder) == ()
    drop_rescue(None, token="a", folder=folder)
    (left,) = find_rescues(folder=folder)
    drop_found(left)
    drop_found(left)
    assert find_rescues(folder=folder) == ()


def test_damaged_rescue_copies_are_passed_over_or_refused_in_words(tmp_path):
    (tmp_path / "odd.rescue").write_bytes(b"\xff\x00")
    (tmp_path / "list.rescue").write_bytes(b"[]\n")
    file = write_rescue(quay(), None, folder=tmp_path)
    file.write_bytes(file.read_bytes()[:-40])
    (found,) = find_rescues(folder=tmp_path)
    with pytest.raises(NotReadable):
        read_rescue(found)
    assert encode(quay()) not in file.read_bytes()
