# make serve: build the handbook and serve it.  make test: check everything.  make help: the rest.
PYTHON ?= python3
PORT ?= 8000
VENV := .venv
export PATH := $(CURDIR)/$(VENV)/bin:$(PATH)
export NO_MKDOCS_2_WARNING := 1

.DEFAULT_GOAL := help
.PHONY: help ready site serve edit test lint unit bench words schema clean

help: ## show these lines
	@grep -E '^[a-z]+:.*##' Makefile | sed 's/:.*## /\t/' | expand -t 10

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

edit: ready ## write entries and see the pages change (no calculators, no offline copy)
	python -m build_tools edit --port $(PORT)

lint: ready ## format, style, types
	ruff format --check .
	ruff check .
	mypy

unit: ready ## everything that needs no browser
	pytest tests --ignore=tests/browser

test: lint site ## everything, a real browser included
	pytest tests

bench: site ## the house's numbers, as ratios measured in one run
	python -m bench

words: ready ## bring the message catalogue up to date
	python -m build_tools words

schema: ready ## write the JSON Schemas that editors use
	python -m build_tools schema

clean: ## take away everything that was built or installed
	rm -rf build site node_modules $(VENV)
