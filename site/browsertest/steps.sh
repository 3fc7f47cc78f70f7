#!/usr/bin/env bash
# Runs the named steps of the test suite with a heading and the time of each,
# and ends with one line that counts them.
set -uo pipefail
cd "$(dirname "$0")/../.."

format() {
	local out
	out=$(gofmt -l build calc wasm) || return 1
	[ -z "$out" ] || { echo "gofmt would change:"; echo "$out"; return 1; }
}
lint() { go vet ./... && go tool staticcheck ./...; }
types() { (cd site && npm run --silent check); }
# The tests of ./wasm run a file that another program builds, which Go's cache of test results does not see. On a fresh clone
# nothing is cached: all at once keeps both cores busy.
go_tests() { [ -n "${CI:-}" ] && { go test -count=1 -timeout 15m ./...; return; }; go test -timeout 15m $(go list ./... | grep -v '/wasm$') && go test -count=1 -timeout 15m ./wasm; }
site() { (cd site && npm test --silent); }
check() { go run ./build check; }
browsers() { node site/browsertest/run.mjs; }

passed=0 failed=0
for step in "$@"; do
	echo "== $step"
	start=$SECONDS
	name=$step
	[ "$step" = go ] && name=go_tests
	if "$name"; then passed=$((passed + 1)); else failed=$((failed + 1)); echo "== $step FAILED"; fi
	echo "== $step took $((SECONDS - start)) s"
done
echo "$passed passed, $failed failed"
[ "$failed" -eq 0 ]
