# Two commands on a fresh machine: `make handbook` builds the demo, `make test` runs everything
# that a change must pass. Both make their own environment in .venv.

PYTHON ?= python3
VENV   := .venv
BIN    := $(VENV)/bin
READY  := $(VENV)/.ready

.PHONY: handbook test coverage serve lint bench clean browser

handbook: $(READY)
	$(BIN)/mkdocs build --quiet
	@echo "The handbook is in site/. Open site/index.html in any browser; no network is needed."

serve: $(READY)
	$(BIN)/mkdocs serve

test: $(READY) browser
	$(BIN)/ruff check .
	$(BIN)/ruff format --check .
	$(BIN)/mypy
	$(BIN)/pytest --numprocesses auto --dist loadfile --no-loadscope-reorder

coverage: $(READY) browser
	$(BIN)/pytest --cov --numprocesses auto --dist loadfile --no-loadscope-reorder

lint: $(READY)
	$(BIN)/ruff check --fix .
	$(BIN)/ruff format .
	$(BIN)/mypy

bench: $(READY)
	$(BIN)/python -m tests.bench

$(READY): pyproject.toml
	$(PYTHON) -m venv $(VENV)
	$(BIN)/python -m pip install --quiet --upgrade pip
	$(BIN)/python -m pip install --quiet --editable '.[dev]'
	@touch $(READY)

# The page tests drive a headless Chromium, the test of valid pages a Java program, the tests of paper
# pdftoppm, those of signed proofs ssh-keygen, those of the history of files git. As root on a Debian machine
# all are installed here; anywhere else the tests say what is missing.
browser:
	@{ command -v ssh-keygen >/dev/null && command -v git >/dev/null && command -v java >/dev/null && command -v pdftoppm >/dev/null && { command -v chromium || command -v chromium-browser || command -v google-chrome; } >/dev/null; } \
	|| { [ "$$(id -u)" = 0 ] && command -v apt-get >/dev/null \
	     && apt-get update -qq && apt-get install -y -qq --no-install-recommends chromium default-jre-headless fonts-dejavu-core git openssh-client poppler-utils >/dev/null; } \
	|| echo "Install the Debian packages chromium (or any Chromium), default-jre-headless, poppler-utils, git and openssh-client for the page, paper, history and proof tests."

clean:
	rm -rf $(VENV) site dist .coverage .pytest_cache .mypy_cache .ruff_cache
