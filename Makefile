# The verbs of the project. Building and serving the handbook needs Go alone;
# the browser tests need Node and three browsers, which "make tools" installs.

.PHONY: build serve check test test-go test-module test-site test-browsers tools tools-browsers tools-site reference curves bench lighthouse shots fmt clean

# Build the site into public/.
build:
	go run ./build

# Build, serve on loopback, rebuild when a file changes.
serve:
	go run ./build serve

# Check content, links, citations and cautions of the built pages.
check:
	go run ./build check

# Everything, as CI runs it: installs what is missing, says what it cannot get,
# and stops at the first step that fails.
test: tools
	@site/browsertest/steps.sh format lint types go site check browsers

# Parts of it.
test-go:
	@site/browsertest/steps.sh format lint go
test-module:
	go test ./wasm/...
test-site: tools-site
	@site/browsertest/steps.sh types site
test-browsers: tools
	@site/browsertest/steps.sh browsers

# Install what the tests need and this machine lacks.
tools: tools-browsers tools-site
tools-browsers:
	@site/browsertest/tools.sh
tools-site:
	@cd site && { [ -d node_modules ] && [ node_modules/.package-lock.json -nt package-lock.json ] || PUPPETEER_SKIP_DOWNLOAD=1 npm ci --no-audit --no-fund; }

# Regenerate the values that come from the reference library and compare them
# with the committed ones.
reference:
	python3 -m venv .venv && .venv/bin/pip install -q -r testdata/reference/requirements.txt
	.venv/bin/python testdata/reference/saturation.py --check
	.venv/bin/python testdata/reference/viscosity.py --check
	.venv/bin/python testdata/reference/grid.py --check
	.venv/bin/python testdata/reference/worksheets.py --check
	.venv/bin/python testdata/reference/psychrometrics.py --check
	.venv/bin/python testdata/reference/recovery.py --check
	.venv/bin/python testdata/reference/oil.py --check

# Fit the saturation curves anew and compare them with the committed ones; a
# test does the same. To write them: go generate ./calc/property/curve
curves:
	go run ./build/internal/curves

# Print each budget beside what was measured.
bench: tools-site
	go run ./build/internal/budget

# Lighthouse's scores for a phone, three runs' median on three pages.
lighthouse: tools
	node site/browsertest/run.mjs lighthouse.mjs

# Screenshots and printed pages, to be looked at: make shots SHOTS=folder
SHOTS ?= /tmp/changeout-shots
shots: tools
	SHOTS=$(SHOTS) node site/browsertest/run.mjs drivers.test.mjs

fmt:
	gofmt -w build calc wasm

clean:
	rm -rf public handbook.html .venv site/node_modules
