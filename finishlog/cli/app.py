"""The command line as a whole: its groups, and the one place that turns faults into exit codes."""

from __future__ import annotations

import sys
from functools import cache
from importlib import import_module
from pathlib import Path
from typing import Annotated, Any

import typer
from typer.core import TyperGroup
from typer.main import get_command

from finishlog import __version__, errors
from finishlog.cli.answering.run import Run
from finishlog.cli.terminal import streams
from finishlog.cli.terminal.talk import say

# Under each heading its commands, and the module of `cli.commands` that declares each.
GROUPS: dict[str, dict[str, str]] = {
    "the evening": {
        **dict.fromkeys(("ready", "log", "check"), "work.bench"),
        "air": "work.air",
        "heat": "work.heating",
        "rags": "work.bench",
        "respirator": "work.respirators",
        **dict.fromkeys(("undo", "amend", "note"), "work.corrections"),
        **dict.fromkeys(("mix", "clean"), "work.cans"),
        **dict.fromkeys(("move", "aside", "resume", "leave"), "work.whereabouts"),
        **dict.fromkeys(("fault", "off"), "work.trouble"),
        **dict.fromkeys(("look", "moisture", "weigh", "surface"), "work.wood"),
    },
    "questions": {
        **dict.fromkeys(("when", "why", "on", "history", "past"), "ask.questions"),
        **dict.fromkeys(("plan", "over"), "ask.planning"),
        "movement": "work.wood",
        "safety": "ask.safety",
        "rules": "ask.rules",
    },
    "the shop": {
        "project": "shop.projects",
        "part": "shop.parts",
        "steps": "shop.schedules",
        "product": "shop.products",
        "can": "work.cans",
        **dict.fromkeys(("room", "shop"), "shop.shop"),
        "away": "work.whereabouts",
    },
    "closing": dict.fromkeys(("handover", "review", "photo"), "work.closing"),
    "reference": dict.fromkeys(("species", "class", "glue"), "ask.reference"),
    "care": {"settings": "shop.settings", "demo": "shop.demo"},
}
MODULES = {name: module for names in GROUPS.values() for name, module in names.items()}


# What people say for a command. It is offered, never run: what they mean may record something.
SAID_FOR = {
    "ready": "status today now todo tonight list",
    "log": "coat coated add record did sand sanded scuff brush spray wipe",
    "check": "test touch thumbnail",
    "fault": "problem defect run blush",
    "off": "strip stripped remove sanded-off",
    "undo": "oops revert back",
    "leave": "goodnight bye close home lights",
    "past": "search find last previous",
    "note": "remark comment memo",
    "history": "journal diary",
    "can": "cans jar tin jars",
    "respirator": "mask cartridge cartridges filter filters",
    "mix": "blend thin",
    "heat": "heater heating",
    "air": "humidity temperature weather",
    "plan": "schedule calendar week",
    "part": "parts list",
    "species": "wood woods",
    "product": "products finish finishes",
    "handover": "deliver delivered sold ship",
    "glue": "glues",
    "class": "classes",
}


class InGroups(TyperGroup):
    """Lists the commands under the headings that a person looks for."""

    def resolve_command(self, ctx: Any, args: list[str]) -> Any:  # noqa: ANN401
        """Find the command; one that there is not is refused with what is called nearly so."""
        name = args[0]
        if name in MODULES or name.startswith("-"):
            return super().resolve_command(ctx, args)
        from difflib import get_close_matches

        said = [command for command, words in SAID_FOR.items() if name.casefold() in words.split()]
        near = said or get_close_matches(name.casefold(), MODULES, n=2, cutoff=0.6)
        offered = " or ".join(f"finishlog {each}" for each in near)
        hint = "finishlog --help shows what there is"
        raise errors.UsageFault(
            f"there is no command {name!r}", f"did you mean {offered}? {hint}" if near else hint
        )

    def list_commands(self, ctx: Any) -> list[str]:  # noqa: ANN401
        """Return the commands in the order of their groups."""
        return list(MODULES)

    def format_commands(self, ctx: Any, formatter: Any) -> None:  # noqa: ANN401
        """Write each group under its heading."""
        for heading, names in GROUPS.items():
            commands = [(name, self.get_command(ctx, name)) for name in names]
            rows = [(name, c.get_short_help_str(60)) for name, c in commands if c]
            with formatter.section(heading):
                formatter.write_dl(rows)


def _version(wanted: bool) -> None:
    if wanted:
        typer.echo(f"finishlog {__version__}")
        raise typer.Exit


def _completion(shell: str | None) -> None:
    if shell is not None:
        from finishlog.cli.completion.scripts import script

        typer.echo(script(shell), nl=False)
        raise typer.Exit


def start(
    context: typer.Context,
    db: Annotated[
        Path | None,
        typer.Option("--db", metavar="FILE", help="The database; else FINISHLOG_DB, else yours."),
    ] = None,
    version: Annotated[
        bool, typer.Option("--version", callback=_version, is_eager=True, help="Show the version.")
    ] = False,
    completion: Annotated[
        str | None,
        typer.Option(
            "--completion",
            metavar="SHELL",
            callback=_completion,
            is_eager=True,
            help="Print what makes bash, zsh or fish complete names.",
        ),
    ] = None,
) -> None:
    """Say which database this run is about."""
    context.obj.chosen_path = db


def command_line(only: str | None = None) -> typer.Typer:
    """Build the command line, or the one command that was typed.

    Building them all takes longer than most commands do.
    """
    built = typer.Typer(
        cls=InGroups,
        name="finishlog",
        help="Log each coat, ask what is ready, review past finishes by species.",
        epilog="Safety data sheets, local codes and licensed practice come before anything said "
        "here.",
        rich_markup_mode=None,
        add_completion=False,
        no_args_is_help=True,
        pretty_exceptions_enable=False,
    )
    built.callback()(start)
    for module in dict.fromkeys(m for name, m in MODULES.items() if only in {None, name}):
        import_module(f"finishlog.cli.commands.{module}").register(built)
    if only is not None:
        built.registered_commands = [c for c in built.registered_commands if c.name == only]
        built.registered_groups = [g for g in built.registered_groups if g.name == only]
    return built


@cache
def parser(only: str | None) -> Any:  # noqa: ANN401
    """Build the parser of the command that was typed; a process that runs many keeps it."""
    return get_command(command_line(only))


def _typed(arguments: list[str]) -> str | None:
    """Find the command in what was typed, if it stands where it is expected; '' needs none."""
    if arguments[:1] in (["--version"], ["--completion"]):
        return ""
    rest = arguments[2:] if arguments[:1] == ["--db"] else arguments
    return rest[0] if rest and rest[0] in MODULES else None


def run(arguments: list[str]) -> int:
    """Run one command; return its exit code. Nothing a person does ends in a traceback."""
    streams.make_usable()
    here = Run(words=arguments)
    try:
        _refuse_no_text(arguments)
        code = _exit_code(
            parser(_typed(arguments)).main(
                arguments, prog_name="finishlog", standalone_mode=False, obj=here
            )
        )
        here.say_that_the_clock_is_behind()
        return code
    except errors.FinishlogError as fault:
        line = _line(fault)
        say(line, here.units_of(line))
        return fault.exit_code
    except KeyboardInterrupt:
        return errors.INTERRUPTED
    except (BrokenPipeError, SystemExit):
        # The parser turns a pipe that closes in the middle of an answer into SystemExit.
        return _unwritten(here, None)
    except OSError as fault:
        return _of_the_system(here, fault)
    except Exception as fault:
        return _other(here, fault, arguments)
    finally:
        here.say_what_was_made()
        here.close()


def _refuse_no_text(arguments: list[str]) -> None:
    for word in arguments:
        if any("\ud800" <= sign <= "\udfff" for sign in word):
            raise errors.UsageFault(f"{word!r} is not UTF-8 text", "type it again")


def _exit_code(result: object) -> int:
    sys.stdout.flush()
    return result if isinstance(result, int) else 0


def _line(fault: errors.FinishlogError) -> str:
    """Put what was wrong and what to type on one line."""
    between = " " if fault.message.endswith("?") else "; "
    return f"finishlog: {between.join(x for x in (fault.message, fault.hint) if x)}"


def _of_the_system(here: Run, fault: OSError) -> int:
    """Tell a file that cannot be used, which has a name, from an answer that cannot be written."""
    if fault.filename is None and fault.errno in streams.CANNOT_WRITE:
        return _unwritten(here, fault)
    if fault.filename is None:
        return _our_fault(here, fault)
    say(f"finishlog: {fault.filename}: {fault.strerror}; name another file")
    return errors.BAD_DATA


def _unwritten(here: Run, fault: OSError | None) -> int:
    """End where the answer found no reader. `fault` None: whoever asked reads no further."""
    streams.forget_the_rest()
    if here.has_recorded:
        say("finishlog: recorded, but the answer could not be written; see finishlog history")
        return errors.NOT_WRITTEN
    if fault is None:
        return 0
    say(f"finishlog: the answer could not be written: {fault.strerror}")
    return errors.NOT_WRITTEN


def _other(here: Run, fault: Exception, arguments: list[str]) -> int:
    """Tell a wrong command line from a fault of ours."""
    if type(fault).__name__ == "Abort":
        return errors.INTERRUPTED
    if type(fault).__name__ == "NoArgsIsHelpError":
        print(fault, file=sys.stderr)
        return errors.USAGE
    if hasattr(fault, "format_message"):
        from finishlog.cli.answering.misread import refusal

        top = parser(_typed(arguments))
        say(_line(refusal(fault, arguments, top, MODULES)))
        return errors.USAGE
    return _our_fault(here, fault)


def _our_fault(here: Run, fault: Exception) -> int:
    found = here.damage()
    if found:
        say(f"finishlog: {here.path} is damaged: {found}; put back a backup")
        return errors.DATABASE
    import traceback

    from finishlog.paths import fault_log_path

    path = fault_log_path()
    where = f"it is in {path}"
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        with path.open("a", encoding="utf-8", errors="replace") as log:
            log.write("".join(traceback.format_exception(fault)))
    except OSError as why:
        where = f"{path} cannot be written ({why.strerror})"
    kept = "what you typed is on record" if here.has_recorded else "nothing was lost"
    say(f"finishlog: a fault of ours ({type(fault).__name__}); {kept}, {where}")
    return errors.OUR_FAULT
