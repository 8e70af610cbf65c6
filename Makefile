# make serve: build the handbook and serve it.  make test: check everything.  make help: the rest.
PYTHON ?= python3
PORT ?= 8000
VENV := .venv
export PATH := $(CURDIR)/$(VENV)/bin:$(PATH)
export NO_MKDOCS_2_WARNING := 1

.DEFAULT_GOAL := help
.PHONY: help ready site serve check new-edition edition serve-edition hand-outs disk edit test lint unit bench words schema clean

help: ## show these lines
	@grep -E '^[a-z-]+:.*##' Makefile | sed 's/:.*## /\t/' | expand -t 16

$(VENV)/ready: requirements.lock requirements-node.lock pyproject.toml
	$(PYTHON) -m venv $(VENV)
	$(VENV)/bin/pip install --quiet --disable-pip-version-check --require-hashes -r requirements.lock
	$(VENV)/bin/pip install --quiet --disable-pip-version-check --no-deps --no-build-isolation --editable .
	command -v npm >/dev/null || $(VENV)/bin/pip install --quiet --require-hashes -r requirements-node.lock
	touch $@

node_modules/ready: package.json package-lock.json | $(VENV)/ready
	npm ci --no-audit --no-fund --silent
	touch $@

ready: $(VENV)/ready node_modules/ready ## install what the handbook needs, here

site: ready ## build the handbook into site/
	python -m build_tools build

serve: site ## build the handbook, serve it and print the address
	python -m build_tools serve --port $(PORT)

check: ready ## look over every entry and every edition; with URL=..., a handbook on a server
	python -m build_tools $(if $(URL),visit $(URL),check)

new-edition: ready ## start a league's own edition; LIKE=pennimoor-valley takes that one's pages along
	python -m build_tools new-edition $(if $(LIKE),--like $(LIKE))

edition: ready ## build a league's edition: make edition NAME=pennimoor-valley
	$(if $(NAME),,$(error Say which edition: make edition NAME=pennimoor-valley))
	python -m build_tools build --edition $(NAME) $(if $(SITE),--site $(SITE))

serve-edition: ## serve an edition that was built, NAME=...
	python -m build_tools serve --edition $(NAME) --port $(PORT)

hand-outs: ready ## cards, sheets and the bag set as PDFs, of the handbook or of NAME=...
	python -m build_tools hand-outs $(if $(NAME),--edition $(NAME)) $(if $(SITE),--site $(SITE))

disk: ready ## pack the site that was built, or NAME=..., for a memory stick
	python -m build_tools disk $(if $(NAME),--edition $(NAME)) $(if $(SITE),--site $(SITE))

edit: ready ## write entries and see the pages change (no calculators, no offline copy)
	python -m build_tools edit --port $(PORT)

lint: ready ## format, style, types
	ruff format --check .
	ruff check .
	mypy

unit: ready ## everything that needs no browser
	pytest tests --ignore=tests/browser

test: lint site ## everything, a real browser included
	pytest tests --ignore=tests/browser --numprocesses auto
	pytest tests/browser --numprocesses auto --dist loadfile

bench: site ## the house's numbers, as ratios measured in one run
	python -m bench

words: ready ## bring the message catalogue up to date
	python -m build_tools words

schema: ready ## write the JSON Schemas that editors use
	python -m build_tools schema

clean: ## take away everything that was built or installed
	rm -rf build site site-* node_modules $(VENV)
