"""``python -m specscan``: the same as the command ``specscan``."""

from specscan.cli.main import main

main(prog_name="specscan")
