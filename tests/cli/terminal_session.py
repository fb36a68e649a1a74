"""A real terminal: the program on a pseudo-terminal of its own, read and typed at as a person.

The program is a process of its own, forked from this warm one so that a session costs no imports.
"""

from __future__ import annotations

import fcntl
import multiprocessing
import os
import pty
import select
import signal
import struct
import termios
import time
from collections.abc import Sequence
from types import TracebackType
from typing import Self

from run import Finishlog, become

PATIENCE_S = 30.0


class TerminalSession:
    """One command at a terminal. Leaving the block waits for its end."""

    def __init__(
        self,
        program: Finishlog,
        *words: str,
        columns: int = 80,
        out: int | None = None,
        run: Sequence[str] | None = None,
        **more: str,
    ) -> None:
        self.screen = ""
        self._keys, terminal = pty.openpty()
        size = struct.pack("HHHH", 24, columns, 0, 0)
        fcntl.ioctl(terminal, termios.TIOCSWINSZ, size)
        variables = program.variables({"TERM": "xterm-256color", **more})
        streams = (terminal, terminal if out is None else out, terminal)
        self._process = multiprocessing.get_context("fork").Process(
            target=become, args=(words, run, variables, program.folder, streams)
        )
        self._process.start()
        os.close(terminal)

    def __enter__(self) -> Self:
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        fault: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        try:
            if kind is None:
                self._read_until(None)
                self._process.join(PATIENCE_S)
        finally:
            self._process.kill()
            self._process.join(PATIENCE_S)
            os.close(self._keys)

    @property
    def code(self) -> int:
        """The exit code."""
        assert self._process.exitcode is not None
        return self._process.exitcode

    @property
    def lines(self) -> list[str]:
        """What stood on the screen, line by line, escape codes and all."""
        return self.screen.replace("\r\n", "\n").splitlines()

    def answer(self, question: str, typed: str) -> None:
        """Wait for a question and type a line."""
        self._read_until(question)
        os.write(self._keys, f"{typed}\n".encode())

    def press(self, keys: str, awaited: str) -> None:
        """Press keys and wait for what they bring on the screen."""
        os.write(self._keys, keys.encode())
        self._read_until(awaited)

    def interrupt(self, question: str) -> None:
        """Wait for a question and press Ctrl-C, as the terminal passes it on.

        On a loaded machine the interpreter may drop one that comes while it cleans up; a person
        presses again.
        """
        self._read_until(question)
        for _ in range(3):
            os.killpg(self._process.pid, signal.SIGINT)
            self._process.join(5)
            if self._process.exitcode is not None:
                return

    def _read_until(self, awaited: str | None) -> None:
        """Read until something new is on the screen, or to the end."""
        begin, until = len(self.screen), time.monotonic() + PATIENCE_S
        while awaited is None or awaited not in self.screen[begin:]:
            ready, _, _ = select.select([self._keys], [], [], until - time.monotonic())
            assert ready, f"nothing came; on the screen: {self.screen}"
            text = self._read()
            if not text:
                assert awaited is None, f"it ended without {awaited!r}: {self.screen}"
                return
            self.screen += text

    def _read(self) -> str:
        try:
            # Cut in the middle of a sign, the rest follows at once.
            data = os.read(self._keys, 65536)
            while data:
                try:
                    return data.decode()
                except UnicodeDecodeError:
                    data += os.read(self._keys, 1)
        except OSError:  # Linux says so when the last process has closed the terminal.
            pass
        return ""


def shown(program: Finishlog, *words: str, columns: int = 80, **more: str) -> TerminalSession:
    """Run one command at a terminal to its end."""
    with TerminalSession(program, *words, columns=columns, **more) as session:
        pass
    return session
