//go:build !unix

package main

// heedLimits does nothing where there is no such limit.
func heedLimits() {}
