//go:build e2e

package main

import (
	"os"
	"testing"

	"coldfloor/internal/pulsetest"
)

// soundServer starts a sound server that ends with the test. Its folder is a short
// one, for a socket's path must not be long.
func soundServer(t *testing.T) *pulsetest.Server {
	t.Helper()
	dir, err := os.MkdirTemp("", "pulse")
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { os.RemoveAll(dir) })
	server, err := pulsetest.Start(dir)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(server.Stop)
	return server
}
