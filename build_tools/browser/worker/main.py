"""The worker's own program: hands the page the one thing it may call."""

# From `polyscript`, which PyScript is built on and which is always there: the `pyscript` package itself is
# put into a worker only when the plugins came in before it, and compiling it would delay the first answer.
from desk_worker import answer
from polyscript import xworker

xworker.sync.answer = answer
