"""`python -m build_tools`: see `build_tools.command_line`."""

from build_tools.command_line import main

main()
