"""How the properties search: the same examples on every machine and day, or at random, longer.

The command of README draws the same examples each time, so that it gives one verdict. `.ci/run`
searches besides with `--hypothesis-profile=search` and a new seed, which it prints. What that
finds is kept beside its test as an `@example`.
"""

from hypothesis import Phase, settings

settings.register_profile("same", derandomize=True, database=None, deadline=None)
# Explaining a find costs minutes and adds nothing to the seed and the smallest example.
settings.register_profile(
    "search",
    database=None,
    deadline=None,
    print_blob=True,
    phases=(Phase.explicit, Phase.generate, Phase.shrink),
)
settings.load_profile("same")
