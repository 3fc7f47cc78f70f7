//go:build !wasip1

package main

import "os"

// The module is built for the phone only; elsewhere this says how.
func main() {
	os.Stderr.WriteString("wasm: build it for the phone: GOOS=wasip1 GOARCH=wasm go build -buildmode=c-shared ./wasm\n")
	os.Exit(2)
}
