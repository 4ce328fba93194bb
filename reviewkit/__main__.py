"""`python -m reviewkit`."""

from reviewkit.cli import main

main()
